namespace CalibGeom.Planar;

/// <summary>The convex hull of points (Andrew, Information Processing Letters 9, 1979).</summary>
internal static class ConvexHull
{
    /// <summary>The corners of the hull, counter-clockwise; all points when there are fewer than three.</summary>
    internal static (double X, double Y)[] Of(IEnumerable<(double X, double Y)> points)
    {
        (double X, double Y)[] sorted = [.. points.Distinct().Order()];
        return sorted.Length < 3 ? sorted : [.. Chain(sorted), .. Chain(sorted.Reverse())];
    }

    private static IEnumerable<(double X, double Y)> Chain(IEnumerable<(double X, double Y)> sorted)
    {
        var chain = new List<(double X, double Y)>();
        foreach ((double X, double Y) point in sorted)
        {
            while (chain.Count > 1 && Turn(chain[^2], chain[^1], point) <= 0)
                chain.RemoveAt(chain.Count - 1);
            chain.Add(point);
        }
        return chain.SkipLast(1);
    }

    /// <summary>Twice the area of a triangle, positive when counter-clockwise.</summary>
    internal static double Turn((double X, double Y) a, (double X, double Y) b, (double X, double Y) c) =>
        (b.X - a.X) * (c.Y - a.Y) - (b.Y - a.Y) * (c.X - a.X);
}
