namespace CalibGeom.Planar;

/// <summary>
/// Hobby's snap rounding on the integer grid: every segment becomes a chain through all hot pixels it passes, a pixel
/// being hot when it holds an end or (rounded) a crossing. Afterwards chains meet only in vertices. A pixel is the
/// half-open unit square about a grid point.
/// </summary>
internal sealed class SnapRounding
{
    private readonly (GridPoint A, GridPoint B)[] segments;
    private readonly GridPoint[] hot;
    private readonly int[] starts;
    private readonly int[] numbers;

    internal SnapRounding((GridPoint A, GridPoint B)[] segments)
    {
        this.segments = segments;
        var points = new List<GridPoint>(2 * segments.Length);
        foreach ((GridPoint a, GridPoint b) in segments)
        {
            points.Add(a);
            points.Add(b);
        }
        BoxTree tree = BoxTree.OfSegments(segments);
        AddCrossings(tree, points);
        hot = Distinct([.. points]);
        (starts, numbers) = Chains(tree);
    }

    /// <summary>All vertices, sorted.</summary>
    internal GridPoint[] Vertices => hot;

    /// <summary>
    /// Where the chain of each segment begins in <see cref="Numbers"/>; one number more, where the last ends.
    /// </summary>
    internal int[] Starts => starts;

    /// <summary>
    /// The chains of all segments one after the other: indices into <see cref="Vertices"/> from a segment's first end
    /// to its second.
    /// </summary>
    internal int[] Numbers => numbers;

    /// <summary>The chain of one segment.</summary>
    internal ReadOnlySpan<int> Chain(int segment) => numbers.AsSpan(starts[segment]..starts[segment + 1]);

    /// <summary>All hot pixels that each segment passes, in order along it.</summary>
    private (int[] Starts, int[] Numbers) Chains(BoxTree tree)
    {
        var passed = new List<(int Segment, int Index)>(2 * segments.Length);
        var begin = new int[segments.Length + 1];
        tree.Pairs(
            BoxTree.OfSegments(Array.ConvertAll(hot, p => (p, p))),
            (s, i) =>
            {
                (GridPoint a, GridPoint b) = segments[s];
                GridPoint p = hot[i];
                if (p == a || p == b || PassesThrough(a, b, p))
                {
                    passed.Add((s, i));
                    begin[s + 1]++;
                }
                return true;
            }
        );
        for (int s = 0; s < segments.Length; s++)
            begin[s + 1] += begin[s];
        int[] sorted = new int[passed.Count],
            filled = begin[..^1];
        foreach ((int s, int i) in passed)
            sorted[filled[s]++] = i;
        for (int s = 0; s < segments.Length; s++)
            Order(sorted.AsSpan(begin[s]..begin[s + 1]), segments[s].A, segments[s].B);
        return (begin, sorted);
    }

    private void Order(Span<int> chain, GridPoint a, GridPoint b)
    {
        if (chain.Length > 2)
            chain.Sort((i, j) => (Along(hot[i]), i).CompareTo((Along(hot[j]), j)));
        else if (chain.Length == 2 && hot[chain[0]] != a)
            chain.Reverse();

        long Along(GridPoint p) => ((long)p.X - a.X) * ((long)b.X - a.X) + ((long)p.Y - a.Y) * ((long)b.Y - a.Y);
    }

    /// <summary>
    /// Whether segment a-b meets the half-open pixel about c. Ends are grid points and never lie on a pixel's border,
    /// so that the line test and the box test together decide.
    /// </summary>
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

    private void AddCrossings(BoxTree tree, List<GridPoint> points)
    {
        tree.Pairs(
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
