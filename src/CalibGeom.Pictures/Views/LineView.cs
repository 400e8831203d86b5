using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Pictures.Views;

/// <summary>The edges of a mesh that are seen from a direction; hidden ones left out.</summary>
internal static class LineView
{
    private const double Step = 0.2,
        Tolerance = 0.08,
        MostDots = 4_000_000;

    /// <summary>Lines in the picture's plane, X right and Y up, mm.</summary>
    internal static IReadOnlyList<Vector2D[]> Of(TriangleMesh mesh, ViewDirection view)
    {
        Box2D extent = Box2D.Round(mesh, view);
        double dots = Math.Min(14, Math.Sqrt(MostDots / Math.Max(1, extent.Width * extent.Height)));
        DepthMap map = DepthMap.Of(mesh, view, dots, 3 / dots);
        double tolerance = Math.Max(Tolerance, 1.5 / dots);
        var seen = new HashSet<(long, long, long, long)>();
        var lines = new List<Vector2D[]>();
        foreach ((Vector3D from, Vector3D to) in SharpEdges.Of(mesh, view))
        foreach (var line in Visible(map, view.Project(from), view.Project(to), tolerance))
            if (seen.Add(Key(line)))
                lines.Add(line);
        return Polylines.Join(lines);
    }

    private static IEnumerable<Vector2D[]> Visible(DepthMap map, Vector3D a, Vector3D b, double tolerance)
    {
        double length = Math.Sqrt((b.X - a.X) * (b.X - a.X) + (b.Y - a.Y) * (b.Y - a.Y));
        if (length < 1e-3)
            yield break;
        int count = Math.Max(1, (int)Math.Ceiling(length / Step));
        int start = -1;
        for (int i = 0; i <= count; i++)
        {
            bool seen = i < count && map.Sees(At(a, b, (i + 0.5) / count), tolerance);
            if (seen && start < 0)
                start = i;
            if (seen || start < 0)
                continue;
            (double x0, double y0, _) = At(a, b, (double)start / count);
            (double x1, double y1, _) = At(a, b, (double)i / count);
            yield return [(x0, y0), (x1, y1)];
            start = -1;
        }
    }

    private static Vector3D At(Vector3D a, Vector3D b, double share) => a + (b - a) * share;

    private static (long, long, long, long) Key(Vector2D[] line)
    {
        (long, long) a = ((long)Math.Round(line[0].X * 500), (long)Math.Round(line[0].Y * 500)),
            b = ((long)Math.Round(line[1].X * 500), (long)Math.Round(line[1].Y * 500));
        return a.CompareTo(b) < 0 ? (a.Item1, a.Item2, b.Item1, b.Item2) : (b.Item1, b.Item2, a.Item1, a.Item2);
    }
}
