namespace CalibGeom.Plates;

/// <summary>
/// Distances between triangles of the plane, given as six coordinates; a triangle may be flat (a segment) or a point.
/// </summary>
internal static class PlanarDistance
{
    /// <summary>
    /// The squared distance between a triangle and another one moved by (dx, dy); 0 when they touch or overlap.
    /// </summary>
    internal static double Squared(ReadOnlySpan<double> fixedTriangle, ReadOnlySpan<double> moved, double dx, double dy)
    {
        Span<double> other = stackalloc double[6];
        for (int i = 0; i < 6; i += 2)
            (other[i], other[i + 1]) = (moved[i] + dx, moved[i + 1] + dy);
        double best = double.PositiveInfinity;
        for (int i = 0, j = 4; i < 6; j = i, i += 2)
        for (int k = 0, l = 4; k < 6; l = k, k += 2)
        {
            if (Crosses(fixedTriangle, j, i, other, l, k))
                return 0;
            best = Math.Min(best, PointSegment(other[k], other[k + 1], fixedTriangle, j, i));
            best = Math.Min(best, PointSegment(fixedTriangle[i], fixedTriangle[i + 1], other, l, k));
            if (best == 0)
                return 0;
        }
        return Contains(fixedTriangle, other[0], other[1]) || Contains(other, fixedTriangle[0], fixedTriangle[1])
            ? 0
            : best;
    }

    /// <summary>The squared distance between a triangle and a point; 0 inside.</summary>
    internal static double Squared(ReadOnlySpan<double> triangle, double x, double y)
    {
        if (Contains(triangle, x, y))
            return 0;
        return Math.Min(
            PointSegment(x, y, triangle, 0, 2),
            Math.Min(PointSegment(x, y, triangle, 2, 4), PointSegment(x, y, triangle, 4, 0))
        );
    }

    private static double PointSegment(double x, double y, ReadOnlySpan<double> t, int a, int b)
    {
        double ux = t[b] - t[a],
            uy = t[b + 1] - t[a + 1],
            vx = x - t[a],
            vy = y - t[a + 1];
        double square = ux * ux + uy * uy;
        double along = square > 0 ? Math.Clamp((ux * vx + uy * vy) / square, 0, 1) : 0;
        double px = vx - along * ux,
            py = vy - along * uy;
        return px * px + py * py;
    }

    private static bool Crosses(ReadOnlySpan<double> s, int a, int b, ReadOnlySpan<double> t, int c, int d) =>
        Side(s, a, b, t[c], t[c + 1]) * Side(s, a, b, t[d], t[d + 1]) < 0
        && Side(t, c, d, s[a], s[a + 1]) * Side(t, c, d, s[b], s[b + 1]) < 0;

    private static bool Contains(ReadOnlySpan<double> t, double x, double y)
    {
        int one = Side(t, 0, 2, x, y),
            two = Side(t, 2, 4, x, y),
            three = Side(t, 4, 0, x, y);
        return one != 0 && one == two && two == three;
    }

    private static int Side(ReadOnlySpan<double> t, int a, int b, double x, double y) =>
        Math.Sign((t[b] - t[a]) * (y - t[a + 1]) - (t[b + 1] - t[a + 1]) * (x - t[a]));
}
