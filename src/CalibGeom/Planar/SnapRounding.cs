using System.Runtime.Intrinsics;

namespace CalibGeom.Planar;

/// <summary>
/// Hobby's snap rounding on the integer grid: every segment becomes a chain through all hot pixels it passes, a pixel
/// being hot when it
/// holds an end or (rounded) a crossing. Afterwards chains meet only in vertices. A pixel is the half-open unit square
/// about a grid point.
/// </summary>
internal sealed class SnapRounding
{
    private readonly (GridPoint A, GridPoint B)[] segments;
    private readonly GridPoint[] hot;
    private readonly List<(long Along, int Index)> passed = [];

    internal SnapRounding((GridPoint A, GridPoint B)[] segments)
    {
        this.segments = segments;
        var points = new List<GridPoint>(2 * segments.Length);
        foreach ((GridPoint a, GridPoint b) in segments)
        {
            points.Add(a);
            points.Add(b);
        }
        AddCrossings(points);
        hot = Distinct([.. points]);
    }

    /// <summary>All vertices, sorted.</summary>
    internal GridPoint[] Vertices => hot;

    /// <summary>
    /// The chain of one segment as indices into <see cref="Vertices"/>, from its first end to its second.
    /// </summary>
    internal int[] Chain(int segment)
    {
        (GridPoint a, GridPoint b) = segments[segment];
        int minX = Math.Min(a.X, b.X),
            maxX = Math.Max(a.X, b.X),
            minY = Math.Min(a.Y, b.Y),
            maxY = Math.Max(a.Y, b.Y);
        passed.Clear();
        for (int i = FirstAtOrAfter(minX); i < hot.Length && hot[i].X <= maxX; i++)
            if (hot[i].Y >= minY && hot[i].Y <= maxY && PassesThrough(a, b, hot[i]))
                passed.Add(((long)(hot[i].X - a.X) * (b.X - a.X) + (long)(hot[i].Y - a.Y) * (b.Y - a.Y), i));
        passed.Sort();
        var chain = new int[passed.Count];
        for (int i = 0; i < chain.Length; i++)
            chain[i] = passed[i].Index;
        return chain;
    }

    /// <summary>Whether segment a-b meets the half-open pixel about c. Ends are grid points and never lie on a pixel's
    /// border, so that
    /// the line test and the box test together decide.</summary>
    internal static bool PassesThrough(GridPoint a, GridPoint b, GridPoint c)
    {
        long ux = (long)b.X - a.X,
            uy = (long)b.Y - a.Y;
        // Twice the signed distance terms of the four corners c + (+-1/2, +-1/2) from the line.
        long centre = 2 * (ux * (c.Y - a.Y) - uy * (c.X - a.X));
        long spread = Math.Abs(ux) + Math.Abs(uy);
        if (Math.Abs(centre) < spread)
            return true;
        if (Math.Abs(centre) > spread)
            return false;
        // The line only touches a corner; the pixel owns its lower left one.
        return centre + uy - ux == 0;
    }

    private int FirstAtOrAfter(int x)
    {
        int low = 0,
            high = hot.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (hot[middle].X < x)
                low = middle + 1;
            else
                high = middle;
        }
        return low;
    }

    private void AddCrossings(List<GridPoint> points)
    {
        var boxes = new (Vector128<float>, Vector128<float>)[segments.Length];
        for (int i = 0; i < boxes.Length; i++)
            boxes[i] = BoxTree.Box(segments[i].A, segments[i].B);
        new BoxTree(boxes).Pairs(
            (s, t) =>
            {
                ((GridPoint a, GridPoint b), (GridPoint c, GridPoint d)) = (segments[s], segments[t]);
                if (a != c && a != d && b != c && b != d && Crosses(a, b, c, d))
                    points.Add(RoundedCrossing(a, b, c, d));
                return true;
            }
        );
    }

    /// <summary>The points sorted, each once.</summary>
    private static GridPoint[] Distinct(GridPoint[] points)
    {
        // One number orders a point by x, then y: sorting numbers is several times faster.
        var keys = Array.ConvertAll(points, p => (long)p.X << 32 | (uint)(p.Y ^ int.MinValue));
        Array.Sort(keys);
        int count = 0;
        for (int i = 0; i < keys.Length; i++)
            if (i == 0 || keys[i] != keys[i - 1])
                points[count++] = new GridPoint((int)(keys[i] >> 32), (int)(uint)keys[i] ^ int.MinValue);
        return points[..count];
    }

    private static bool Crosses(GridPoint a, GridPoint b, GridPoint c, GridPoint d) =>
        Predicates.Turn(a, b, c) * Predicates.Turn(a, b, d) < 0
        && Predicates.Turn(c, d, a) * Predicates.Turn(c, d, b) < 0;

    private static GridPoint RoundedCrossing(GridPoint a, GridPoint b, GridPoint c, GridPoint d)
    {
        Int128 toC = Predicates.Cross(a, b, c),
            toD = Predicates.Cross(a, b, d),
            whole = toC - toD;
        return new GridPoint(
            (int)(c.X + RoundHalfUp(toC * (d.X - c.X), whole)),
            (int)(c.Y + RoundHalfUp(toC * (d.Y - c.Y), whole))
        );
    }

    private static Int128 RoundHalfUp(Int128 numerator, Int128 denominator)
    {
        if (denominator < 0)
            (numerator, denominator) = (-numerator, -denominator);
        Int128 doubled = 2 * numerator + denominator,
            divisor = 2 * denominator;
        Int128 quotient = doubled / divisor;
        return doubled % divisor < 0 ? quotient - 1 : quotient;
    }
}
