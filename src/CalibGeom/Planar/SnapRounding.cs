namespace CalibGeom.Planar;

/// <summary>
/// Hobby's snap rounding on the integer grid: every segment becomes a chain through all hot pixels it passes, a pixel
/// being hot when it holds an end or (rounded) a crossing. Afterwards chains meet only in vertices. A pixel is the
/// half-open unit square about a grid point.
/// </summary>
internal sealed class SnapRounding
{
    private readonly (GridPoint A, GridPoint B)[] segments;
    private readonly List<GridPoint> crossings = [];
    private readonly List<(int Segment, int Point)> passed = [];
    private readonly GridPoint[] hot;

    internal SnapRounding((GridPoint A, GridPoint B)[] segments)
    {
        this.segments = segments;
        BoxTree tree = BoxTree.OfSegments(segments);
        tree.Pairs(Meet);
        (hot, int[] places) = Numbered();
        // Points are counted as they were found until here: two ends a segment, then crossings.
        var between = passed.ConvertAll(p => (p.Segment, places[p.Point]));
        if (crossings.Count > 0)
            PassCrossings(tree, [.. places.AsSpan(2 * segments.Length).ToArray().Distinct()], between);
        (Starts, Numbers) = Chains(places, Ascending.Of(between));
    }

    /// <summary>All vertices, sorted.</summary>
    internal GridPoint[] Vertices => hot;

    /// <summary>
    /// Where the chain of each segment begins in <see cref="Numbers"/>; one number more, where the last ends.
    /// </summary>
    internal int[] Starts { get; }

    /// <summary>
    /// The chains of all segments one after the other: indices into <see cref="Vertices"/> from a segment's first end
    /// to its second.
    /// </summary>
    internal int[] Numbers { get; }

    /// <summary>The chain of one segment.</summary>
    internal ReadOnlySpan<int> Chain(int segment) => Numbers.AsSpan(Starts[segment]..Starts[segment + 1]);

    /// <summary>
    /// Two segments whose bounds meet: where they cross, and which end of one lies in a pixel that the other passes.
    /// </summary>
    private bool Meet(int s, int t)
    {
        ((GridPoint a, GridPoint b), (GridPoint c, GridPoint d)) = (segments[s], segments[t]);
        if (a != c && a != d && b != c && b != d && Crosses(a, b, c, d))
            crossings.Add(RoundedCrossing(a, b, c, d));
        Pass(s, c, 2 * t);
        Pass(s, d, 2 * t + 1);
        Pass(t, a, 2 * s);
        Pass(t, b, 2 * s + 1);
        return true;
    }

    private void Pass(int segment, GridPoint p, int point)
    {
        (GridPoint a, GridPoint b) = segments[segment];
        if (p != a && p != b && Predicates.InBox(a, b, p) && PassesThrough(a, b, p))
            passed.Add((segment, point));
    }

    private void PassCrossings(BoxTree tree, int[] places, List<(int Segment, int Vertex)> between)
    {
        tree.Pairs(
            BoxTree.OfSegments(Array.ConvertAll(places, i => (hot[i], hot[i]))),
            (s, i) =>
            {
                (GridPoint a, GridPoint b) = segments[s];
                GridPoint p = hot[places[i]];
                if (p != a && p != b && PassesThrough(a, b, p))
                    between.Add((s, places[i]));
                return true;
            }
        );
    }

    /// <summary>The chains of all segments: its ends and, in order along it, what it passes between them.</summary>
    /// <param name="places">The vertices of the ends.</param>
    /// <param name="between">Segments and the vertices that they pass, by segment, each once.</param>
    private (int[] Starts, int[] Numbers) Chains(int[] places, (int Segment, int Vertex)[] between)
    {
        int[] begin = new int[segments.Length + 1],
            all = new int[2 * segments.Length + between.Length];
        int filled = 0,
            next = 0;
        for (int s = 0; s < segments.Length; s++)
        {
            all[filled++] = places[2 * s];
            int from = filled;
            for (; next < between.Length && between[next].Segment == s; next++)
                all[filled++] = between[next].Vertex;
            if (filled > from + 1)
                Order(all.AsSpan(from..filled), segments[s].A, segments[s].B);
            all[filled++] = places[2 * s + 1];
            begin[s + 1] = filled;
        }
        return (begin, all);
    }

    private void Order(Span<int> chain, GridPoint a, GridPoint b)
    {
        chain.Sort((i, j) => (Along(hot[i]), i).CompareTo((Along(hot[j]), j)));

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

    /// <summary>
    /// The ends of all segments and the crossings sorted, each once, and where each of them is found.
    /// </summary>
    private (GridPoint[] Points, int[] Places) Numbered()
    {
        // One number orders a point by x, then y: sorting numbers is several times faster.
        var keys = new long[2 * segments.Length + crossings.Count];
        for (int s = 0; s < segments.Length; s++)
            (keys[2 * s], keys[2 * s + 1]) = (Key(segments[s].A), Key(segments[s].B));
        for (int i = 0; i < crossings.Count; i++)
            keys[2 * segments.Length + i] = Key(crossings[i]);
        int[] order = new int[keys.Length],
            places = new int[keys.Length];
        for (int i = 0; i < order.Length; i++)
            order[i] = i;
        Array.Sort(keys, order);
        var points = new GridPoint[keys.Length];
        int count = 0;
        for (int i = 0; i < keys.Length; i++)
        {
            if (i == 0 || keys[i] != keys[i - 1])
                points[count++] = new GridPoint((int)(keys[i] >> 32), (int)(uint)keys[i] ^ int.MinValue);
            places[order[i]] = count - 1;
        }
        return (points[..count], places);

        static long Key(GridPoint p) => (long)p.X << 32 | (uint)(p.Y ^ int.MinValue);
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
