namespace CalibGeom.Planar;

/// <summary>The checks behind <see cref="Outline"/>.</summary>
internal static class OutlineCheck
{
    internal static void Validate(GridPoint[] ring)
    {
        if (ring.Length < 3)
            throw new ArgumentException($"An outline needs at least 3 vertices; this one has {ring.Length}.", "points");
        RequireRange(ring);
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
            if (ring[i] == ring[j])
                throw new ArgumentException(
                    $"An outline repeats its vertex {ring[i]} mm (vertices {j} and {i}); neighbours must differ.",
                    "points"
                );
        RequireSimple(ring);
    }

    internal static void RequireRange(GridPoint[] ring)
    {
        foreach (GridPoint p in ring)
            if (Math.Abs((long)p.X) > Grid.LimitUnits || Math.Abs((long)p.Y) > Grid.LimitUnits)
                throw new ArgumentOutOfRangeException("points", p, "A vertex lies beyond +-1024 mm.");
    }

    private static void RequireSimple(GridPoint[] ring)
    {
        // Edge i ends in vertex i; the first pair in order of the vertices is told, so that a message never changes.
        (int I, int J) worst = (int.MaxValue, 0);
        BoxTree
            .OfRing(ring)
            .Pairs(
                (i, j) =>
                {
                    (i, j) = ((Math.Min(i, j) + ring.Length - 1) % ring.Length, Math.Max(i, j) - 1);
                    (int, int) pair = i < j ? (i, j) : (j, i);
                    if (pair.CompareTo(worst) < 0 && !Apart(ring, pair.Item1, pair.Item2))
                        worst = pair;
                    return true;
                }
            );
        if (worst.I < int.MaxValue)
            throw Meeting(ring, worst.I, worst.J);
    }

    /// <summary>
    /// Whether edge i, which starts at vertex i, and edge j meet at most in a vertex that they share.
    /// </summary>
    private static bool Apart(GridPoint[] ring, int i, int j)
    {
        int n = ring.Length;
        GridPoint a = ring[i],
            b = ring[(i + 1) % n],
            c = ring[j],
            d = ring[(j + 1) % n];
        if ((i + 1) % n == j)
            return !Predicates.OnSegment(a, b, d) && !Predicates.OnSegment(c, d, a);
        if ((j + 1) % n == i)
            return !Predicates.OnSegment(a, b, c) && !Predicates.OnSegment(c, d, b);
        return !Predicates.SegmentsTouch(a, b, c, d);
    }

    private static ArgumentException Meeting(GridPoint[] ring, int i, int j)
    {
        int n = ring.Length;
        return new ArgumentException(
            $"An outline touches or crosses itself: edge {ring[i]}-{ring[(i + 1) % n]} meets edge "
                + $"{ring[j]}-{ring[(j + 1) % n]} (mm).",
            "points"
        );
    }
}
