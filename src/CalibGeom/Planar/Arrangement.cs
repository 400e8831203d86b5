namespace CalibGeom.Planar;

/// <summary>
/// Two sets of rings laid over each other on the grid: snap-rounded vertices, the chain that each ring edge became, and
/// for every edge how
/// the winding number of each set changes across it.
/// </summary>
internal sealed class Arrangement
{
    private readonly Dictionary<(int, int), Winding> edges = [];

    /// <summary>Lays the rings out. Outer rings count +1 inside, holes -1.</summary>
    internal Arrangement(IEnumerable<Region> first, IEnumerable<Region> second)
        : this(RingsOf(first), RingsOf(second)) { }

    internal Arrangement(IReadOnlyList<(Outline Ring, int Sign)> first, IReadOnlyList<(Outline Ring, int Sign)> second)
    {
        (Outline Ring, int Sign)[] rings = [.. first, .. second];
        var segments = new List<(GridPoint, GridPoint)>();
        foreach ((Outline ring, _) in rings)
            for (int i = 0; i < ring.Count; i++)
                segments.Add((ring.Points[i], ring.Points[(i + 1) % ring.Count]));
        var snapped = new SnapRounding([.. segments]);
        Vertices = snapped.Vertices;
        Chains = new int[rings.Length][][];
        int next = 0;
        for (int r = 0; r < rings.Length; r++)
        {
            var weight = r < first.Count ? new Winding(rings[r].Sign, 0) : new Winding(0, rings[r].Sign);
            Chains[r] = new int[rings[r].Ring.Count][];
            for (int e = 0; e < Chains[r].Length; e++)
                Count(Chains[r][e] = snapped.Chain(next++), weight);
        }
    }

    /// <summary>The vertices, sorted.</summary>
    internal IReadOnlyList<GridPoint> Vertices { get; }

    /// <summary>
    /// For every ring (first set, then second; region by region, outer ring first) and every edge of it: the vertices
    /// along it.
    /// </summary>
    internal int[][][] Chains { get; }

    /// <summary>
    /// The edges with their windings: going from the lower to the higher vertex, how much more the left side winds than
    /// the right.
    /// </summary>
    internal IReadOnlyDictionary<(int Low, int High), Winding> Edges => edges;

    private static List<(Outline, int)> RingsOf(IEnumerable<Region> regions) =>
        [.. regions.SelectMany(r => r.Rings.Select((ring, i) => (ring, i == 0 ? 1 : -1)))];

    private void Count(int[] chain, Winding weight)
    {
        for (int i = 1; i < chain.Length; i++)
        {
            (int a, int b) = (chain[i - 1], chain[i]);
            (int, int) key = a < b ? (a, b) : (b, a);
            edges[key] = edges.GetValueOrDefault(key) + (a < b ? weight : -weight);
        }
    }
}
