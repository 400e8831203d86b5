using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Solids;

namespace CalibGeom.Benchmarks;

/// <summary>What the table of docs/performance.md is made with.</summary>
internal static class PerformanceShapes
{
    internal static Solid Plate()
    {
        var lofts = new List<Loft> { Loft.Prism(Outline.Rectangle(-30, -20, 30, 20), 0, 3) };
        for (int i = 0; i < 3; i++)
        {
            Outline outer = Outline.Circle(18 * i - 18, 5, 12, 64),
                inner = Outline.Circle(18 * i - 18, 5, 10, 64);
            lofts.Add(Loft.Prism(outer, 3, 4));
            lofts.Add(Loft.Prism(new Region(outer, inner), 4, 14));
        }
        for (int i = 0; i < 10; i++)
        {
            Outline foot = Outline.Circle(4 * i - 20, -10, 0.3 + 0.1 * i, 32);
            lofts.Add(new Loft(foot, 3, foot.Translate(1, 0.5), 10));
        }
        return new Solid(lofts);
    }

    internal static Solid Columns(int count)
    {
        int side = (int)Math.Ceiling(Math.Sqrt(count));
        var lofts = new List<Loft> { Loft.Prism(Outline.Rectangle(-2, -2, 2 * side, 2 * side), 0, 2) };
        for (int i = 0; i < count; i++)
        {
            Outline shaft = Outline.Circle(2 * (i % side), 2 * (i / side), 0.6, 32),
                head = Outline.Circle(2 * (i % side), 2 * (i / side), 0.9, 32);
            lofts.Add(Loft.Prism(shaft, 2, 6));
            lofts.Add(new Loft(shaft, 6, head, 6.3));
            lofts.Add(Loft.Prism(head, 6.3, 6.6));
        }
        return new Solid(lofts);
    }

    /// <summary>A zigzag about a circle, its teeth so high, mm.</summary>
    internal static Outline Star(int edges, double height, double radius = 900) =>
        Outline.FromMillimetres(
            Enumerable
                .Range(0, edges)
                .Select(i =>
                {
                    (double sin, double cos) = Math.SinCos(2 * Math.PI * i / edges);
                    double r = i % 2 == 0 ? radius : radius - height;
                    return new Vector2D(r * cos, r * sin);
                })
        );

    internal static TriangleMesh Block(double from, double to) =>
        new Solid(Loft.Prism(Outline.Rectangle(from, 0, to, 40), 0, 20)).ToMesh();
}
