namespace CalibGeom.Planar;

/// <summary>
/// Two sets of rings laid over each other on the grid: snap-rounded vertices, the chain that each ring edge became, and
/// for every edge how the winding number of each set changes across it.
/// </summary>
internal sealed class Arrangement
{
    private readonly EdgeTable edges;
    private Winding[] windings = [];

    /// <summary>Lays the rings out. Outer rings count +1 inside, holes -1.</summary>
    internal Arrangement(IEnumerable<Region> first, IEnumerable<Region> second)
        : this(RingsOf(first), RingsOf(second)) { }

    internal Arrangement(IReadOnlyList<(Outline Ring, int Sign)> first, IReadOnlyList<(Outline Ring, int Sign)> second)
    {
        (Outline Ring, int Sign)[] rings = [.. first, .. second];
        var segments = new (GridPoint, GridPoint)[rings.Sum(r => r.Ring.Count)];
        int filled = 0;
        foreach ((Outline ring, _) in rings)
        {
            ReadOnlySpan<GridPoint> points = ring.Points;
            for (int i = 0; i < points.Length; i++)
                segments[filled++] = (points[i], points[i + 1 == points.Length ? 0 : i + 1]);
        }
        Snapped = new SnapRounding(segments);
        edges = new EdgeTable(segments.Length);
        windings = new Winding[segments.Length];
        int next = 0;
        for (int r = 0; r < rings.Length; r++)
        {
            var weight = r < first.Count ? new Winding(rings[r].Sign, 0) : new Winding(0, rings[r].Sign);
            for (int e = 0; e < rings[r].Ring.Count; e++)
                Count(Snapped.Chain(next++), weight);
        }
    }

    /// <summary>
    /// The vertices, and the chain along each edge of each ring: first set, then second; region by region, outer ring
    /// first.
    /// </summary>
    internal SnapRounding Snapped { get; }

    /// <summary>The vertices, sorted.</summary>
    internal GridPoint[] Vertices => Snapped.Vertices;

    /// <summary>The edges, each from its lower to its higher vertex.</summary>
    internal EdgeTable Edges => edges;

    /// <summary>
    /// Going along an edge from its lower to its higher vertex, how much more the left side winds than the right.
    /// </summary>
    internal Winding WindingOf(int edge) => windings[edge];

    private static List<(Outline, int)> RingsOf(IEnumerable<Region> regions) =>
        [.. regions.SelectMany(r => r.Rings.Select((ring, i) => (ring, i == 0 ? 1 : -1)))];

    private void Count(ReadOnlySpan<int> chain, Winding weight)
    {
        for (int i = 1; i < chain.Length; i++)
        {
            (int a, int b) = (chain[i - 1], chain[i]);
            int edge = a < b ? edges.Add(a, b) : edges.Add(b, a);
            if (edge >= windings.Length)
                Array.Resize(ref windings, 2 * edge + 1);
            windings[edge] += a < b ? weight : -weight;
        }
    }
}
