namespace CalibGeom.Planar;

/// <summary>Exact decisions about grid points: differences are below 2^25, so products fit 64 bits.</summary>
internal static class Predicates
{
    /// <summary>Twice the signed area of a, b, c: positive when they turn left.</summary>
    internal static long Cross(GridPoint a, GridPoint b, GridPoint c) =>
        (long)(b.X - a.X) * (c.Y - a.Y) - (long)(b.Y - a.Y) * (c.X - a.X);

    /// <summary>+1 when a, b, c turn left, -1 when right, 0 on a line.</summary>
    internal static int Turn(GridPoint a, GridPoint b, GridPoint c) => Math.Sign(Cross(a, b, c));

    /// <summary>Whether p, known to lie on the line through a and b, lies on the closed segment.</summary>
    internal static bool InBox(GridPoint a, GridPoint b, GridPoint p) =>
        p.X >= Math.Min(a.X, b.X)
        && p.X <= Math.Max(a.X, b.X)
        && p.Y >= Math.Min(a.Y, b.Y)
        && p.Y <= Math.Max(a.Y, b.Y);

    /// <summary>Whether p lies on the closed segment a-b.</summary>
    internal static bool OnSegment(GridPoint a, GridPoint b, GridPoint p) => InBox(a, b, p) && Cross(a, b, p) == 0;

    /// <summary>Whether two closed segments have a point in common.</summary>
    internal static bool SegmentsTouch(GridPoint a, GridPoint b, GridPoint c, GridPoint d)
    {
        int abc = Turn(a, b, c),
            abd = Turn(a, b, d),
            cda = Turn(c, d, a),
            cdb = Turn(c, d, b);
        if (abc * abd < 0 && cda * cdb < 0)
            return true;
        return (abc == 0 && InBox(a, b, c))
            || (abd == 0 && InBox(a, b, d))
            || (cda == 0 && InBox(c, d, a))
            || (cdb == 0 && InBox(c, d, b));
    }

    /// <summary>Positive when d lies strictly inside the circle through the left-turning triangle a, b, c.</summary>
    internal static int InCircle(GridPoint a, GridPoint b, GridPoint c, GridPoint d)
    {
        long ax = (long)a.X - d.X,
            ay = (long)a.Y - d.Y;
        long bx = (long)b.X - d.X,
            by = (long)b.Y - d.Y;
        long cx = (long)c.X - d.X,
            cy = (long)c.Y - d.Y;
        long ab = ax * by - ay * bx,
            bc = bx * cy - by * cx,
            ca = cx * ay - cy * ax;
        long a2 = ax * ax + ay * ay,
            b2 = bx * bx + by * by,
            c2 = cx * cx + cy * cy;
        // Six roundings of at most 2^-53 each, on terms whose sum of sizes is known: beyond that the sign is certain.
        double rough = (double)a2 * bc + (double)b2 * ca + (double)c2 * ab;
        double doubt = 1e-15 * (a2 * Math.Abs((double)bc) + b2 * Math.Abs((double)ca) + c2 * Math.Abs((double)ab));
        if (Math.Abs(rough) > doubt)
            return Math.Sign(rough);
        return Int128.Sign((Int128)a2 * bc + (Int128)b2 * ca + (Int128)c2 * ab);
    }
}
