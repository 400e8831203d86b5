using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;
using CalibGeom.Plates;

namespace CalibGeom.Tests.Plates;

/// <summary>A part of any size that takes no memory: a wavy sheet made anew at each pass.</summary>
internal sealed class WavyPart(int triangles) : PlatePart("wavy")
{
    private readonly StlFacet[] block = new StlFacet[2600];

    public override long TriangleCount => triangles;

    public override TriangleMesh ToMesh() => throw new NotSupportedException();

    private protected override void VisitAll(FacetVisitor visit)
    {
        int columns = (int)Math.Sqrt(triangles / 2),
            at = 0;
        for (int i = 0; i < triangles; i++)
        {
            int column = i / 2 % columns,
                row = i / 2 / columns,
                odd = i & 1;
            block[at++] = Facet((column + odd, row), (column + 1, row + odd), (column, row + 1));
            if (at < block.Length && i + 1 < triangles)
                continue;
            visit(block.AsSpan(0, at));
            at = 0;
        }

        StlFacet Facet((int X, int Y) a, (int X, int Y) b, (int X, int Y) c) =>
            StlFacet.Of(At(a.X), At(a.Y), Height(a), At(b.X), At(b.Y), Height(b), At(c.X), At(c.Y), Height(c));

        float At(int step) => -30 + 60f * step / columns;

        static float Height((int X, int Y) p) => 5 + (p.X * 7 + p.Y * 3) % 5;
    }
}
