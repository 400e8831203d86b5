using CalibGeom.Meshes;

namespace CalibGeom.Solids;

/// <summary>
/// A body made of lofts with disjoint interiors that meet only on level planes. Bodies that come closer than two grid
/// units (0.00025 mm) without touching may cross by a grid unit once crossings of their ends are rounded to the grid;
/// keep such gaps wider. Where the top of one meets the bottom of another the overlap vanishes, so that the mesh of a
/// solid is closed and manifold by construction. Immutable and safe to share between threads.
/// </summary>
public sealed class Solid
{
    private readonly Loft[] lofts;

    /// <summary>A solid.</summary>
    /// <param name="lofts">At least one loft. Their order does not change the shape, only the order of
    /// triangles.</param>
    /// <exception cref="ArgumentException">No loft; or two lofts overlap, share part of a wall, or touch along an edge
    /// or in a point; the message names the lofts and the place.</exception>
    public Solid(params IEnumerable<Loft> lofts)
    {
        ArgumentNullException.ThrowIfNull(lofts);
        this.lofts = Checked([.. lofts], CancellationToken.None);
    }

    internal Solid(Loft[] lofts, CancellationToken cancellation) => this.lofts = Checked(lofts, cancellation);

    /// <summary>The lofts, as given.</summary>
    public IReadOnlyList<Loft> Lofts => lofts;

    /// <summary>The volume in mm3: the sum over the lofts.</summary>
    public double Volume => lofts.Sum(l => l.Volume);

    /// <summary>
    /// The closed surface: every edge in exactly two triangles with opposite directions, normals outward, every
    /// coordinate on the grid. The same solid gives the same mesh, triangle by triangle.
    /// </summary>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentException">Two lofts touch only along an edge or in a point, so that no manifold
    /// surface exists.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public TriangleMesh ToMesh(CancellationToken cancellation = default) =>
        SolidMesher.Assemble(lofts, cancellation).ToMesh();

    /// <summary>
    /// The closed surface turned about an axis through the origin and moved back to the grid, each vertex by less than
    /// a grid unit. An oblique underside (see <see cref="Loft.Wedge"/>) is raised or lowered to z = 0 and then lies
    /// there exactly; without one the height is left as it turns out.
    /// </summary>
    /// <param name="axis">The axis, right-hand rule.</param>
    /// <param name="degrees">Above -90 and below 90 degrees.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentOutOfRangeException">The angle is out of range, or a vertex leaves +-1024
    /// mm.</exception>
    /// <exception cref="ArgumentException">Two lofts touch only along an edge or in a point; walls thinner than the
    /// grid were flattened; or an oblique underside does not lie level after the turn.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public TriangleMesh ToMesh(TiltAxis axis, double degrees, CancellationToken cancellation = default)
    {
        if (!(Math.Abs(degrees) < 90))
            throw new ArgumentOutOfRangeException(
                nameof(degrees),
                degrees,
                "A tilt must be between -90 and 90 degrees."
            );
        MeshAssembly mesh = SolidMesher.Assemble(lofts, cancellation);
        cancellation.ThrowIfCancellationRequested();
        return Tilting.Apply(mesh, lofts, axis, degrees);
    }

    private static Loft[] Checked(Loft[] lofts, CancellationToken cancellation)
    {
        if (lofts.Length == 0)
            throw new ArgumentException("A solid needs at least one loft.", nameof(lofts));
        LoftClearance.Require(lofts, cancellation);
        return lofts;
    }
}
