using CalibGeom.Meshes;

namespace CalibGeom.Solids;

/// <summary>
/// A body made of lofts with disjoint interiors that meet only on level planes. Where the top of one meets the bottom of another the
/// overlap vanishes, so that the mesh of a solid is closed and manifold by construction. Immutable and safe to share between threads.
/// </summary>
public sealed class Solid
{
    private readonly Loft[] lofts;

    /// <summary>A solid.</summary>
    /// <param name="lofts">At least one loft. Their order does not change the shape, only the order of triangles.</param>
    /// <exception cref="ArgumentException">No loft; or two lofts overlap, share part of a wall, or touch along an edge or in a point;
    /// the message names the lofts and the place.</exception>
    public Solid(params IEnumerable<Loft> lofts)
    {
        ArgumentNullException.ThrowIfNull(lofts);
        this.lofts = lofts.ToArray();
        if (this.lofts.Length == 0) throw new ArgumentException("A solid needs at least one loft.", nameof(lofts));
        LoftClearance.Require(this.lofts);
    }

    /// <summary>The lofts, as given.</summary>
    public IReadOnlyList<Loft> Lofts => lofts;

    /// <summary>The volume in mm3: the sum over the lofts.</summary>
    public double Volume => lofts.Sum(l => l.Volume);

    /// <summary>The closed surface: every edge in exactly two triangles with opposite directions, normals outward, every coordinate on the
    /// grid. The same solid gives the same mesh, triangle by triangle.</summary>
    /// <exception cref="ArgumentException">Two lofts touch only along an edge or in a point, so that no manifold surface exists.</exception>
    public TriangleMesh ToMesh() => SolidMesher.Mesh(lofts);
}
