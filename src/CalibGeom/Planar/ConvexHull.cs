namespace CalibGeom.Planar;

/// <summary>The convex hull of points (Andrew, Information Processing Letters 9, 1979).</summary>
internal static class ConvexHull
{
    /// <summary>The corners of the hull, counter-clockwise; all points when there are fewer than three.</summary>
    internal static (double X, double Y)[] Of(IEnumerable<(double X, double Y)> points)
    {
        (double X, double Y)[] sorted = [.. points];
        Array.Sort(sorted, static (a, b) => a.X != b.X ? a.X.CompareTo(b.X) : a.Y.CompareTo(b.Y));
        int kept = 0;
        foreach ((double X, double Y) point in sorted)
            if (kept == 0 || point != sorted[kept - 1])
                sorted[kept++] = point;
        Array.Resize(ref sorted, kept);
        if (kept < 3)
            return sorted;
        var hull = new List<(double X, double Y)>(kept);
        Chain(sorted, hull);
        Array.Reverse(sorted);
        Chain(sorted, hull);
        return [.. hull];
    }

    /// <summary>Adds one side of the hull but for its last corner, where the other side begins.</summary>
    private static void Chain((double X, double Y)[] sorted, List<(double X, double Y)> hull)
    {
        int begin = hull.Count;
        foreach ((double X, double Y) point in sorted)
        {
            while (hull.Count - begin > 1 && Turn(hull[^2], hull[^1], point) <= 0)
                hull.RemoveAt(hull.Count - 1);
            hull.Add(point);
        }
        hull.RemoveAt(hull.Count - 1);
    }

    /// <summary>Twice the area of a triangle, positive when counter-clockwise.</summary>
    internal static double Turn((double X, double Y) a, (double X, double Y) b, (double X, double Y) c) =>
        (b.X - a.X) * (c.Y - a.Y) - (b.Y - a.Y) * (c.X - a.X);
}
