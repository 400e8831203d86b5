using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>A part in memory.</summary>
internal sealed class MeshPart : PlatePart
{
    private const int FacetsInBlock = 2600;

    private readonly TriangleMesh mesh;

    internal MeshPart(string name, TriangleMesh mesh)
        : base(name)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        if (mesh.TriangleCount == 0)
            throw new ArgumentException($"{name} has no triangles.", nameof(mesh));
        this.mesh = mesh;
    }

    public override long TriangleCount => mesh.TriangleCount;

    private protected override void VisitAll(FacetVisitor visit)
    {
        var block = new StlFacet[Math.Min(FacetsInBlock, mesh.TriangleCount)];
        for (int start = 0; start < mesh.TriangleCount; start += block.Length)
        {
            int count = Math.Min(block.Length, mesh.TriangleCount - start);
            for (int i = 0; i < count; i++)
            {
                (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(start + i);
                block[i] = StlFacet.Of(
                    (float)a.X,
                    (float)a.Y,
                    (float)a.Z,
                    (float)b.X,
                    (float)b.Y,
                    (float)b.Z,
                    (float)c.X,
                    (float)c.Y,
                    (float)c.Z
                );
            }
            visit(block.AsSpan(0, count));
        }
    }

    public override TriangleMesh ToMesh() => mesh;
}
