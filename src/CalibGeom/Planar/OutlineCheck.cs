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
        int n = ring.Length;
        var order = Enumerable.Range(0, n).ToArray();
        Array.Sort(order, (a, b) => MinX(ring, a).CompareTo(MinX(ring, b)));
        for (int s = 0; s < n; s++)
        {
            int i = order[s],
                maxX = Math.Max(ring[i].X, ring[(i + 1) % n].X);
            for (int t = s + 1; t < n && MinX(ring, order[t]) <= maxX; t++)
                RequireApart(ring, i, order[t]);
        }
    }

    private static int MinX(GridPoint[] ring, int edge) => Math.Min(ring[edge].X, ring[(edge + 1) % ring.Length].X);

    private static void RequireApart(GridPoint[] ring, int i, int j)
    {
        int n = ring.Length;
        GridPoint a = ring[i],
            b = ring[(i + 1) % n],
            c = ring[j],
            d = ring[(j + 1) % n];
        bool bad =
            (i + 1) % n == j ? Predicates.OnSegment(a, b, d) || Predicates.OnSegment(c, d, a)
            : (j + 1) % n == i ? Predicates.OnSegment(a, b, c) || Predicates.OnSegment(c, d, b)
            : Predicates.SegmentsTouch(a, b, c, d);
        if (bad)
            throw new ArgumentException(
                $"An outline touches or crosses itself: edge {a}-{b} meets edge {c}-{d} (mm).",
                "points"
            );
    }
}
