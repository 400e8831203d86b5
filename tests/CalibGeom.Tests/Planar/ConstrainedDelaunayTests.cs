using CalibGeom.Planar;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Planar;

public class ConstrainedDelaunayTests
{
    private static ConstrainedDelaunay Build(SnapRounding snapped, IEnumerable<(int, int)> edges)
    {
        var mesh = new ConstrainedDelaunay(snapped.Vertices);
        var table = new EdgeTable(0);
        foreach ((int a, int b) in edges)
            table.Add(a, b);
        int[] places = mesh.Require(table);
        for (int t = 0; t < mesh.Count; t++)
        for (int side = 0; side < 3; side++)
        {
            (_, int from, int to) = mesh.Across(t, side);
            Assert.Equal(table.Find(Math.Min(from, to), Math.Max(from, to)), places[3 * t + side]);
        }
        return mesh;
    }

    private static HashSet<(int, int)> Edges(SnapRounding snapped, int segments)
    {
        var edges = new HashSet<(int, int)>();
        for (int s = 0; s < segments; s++)
        {
            ReadOnlySpan<int> chain = snapped.Chain(s);
            for (int i = 1; i < chain.Length; i++)
                edges.Add(chain[i - 1] < chain[i] ? (chain[i - 1], chain[i]) : (chain[i], chain[i - 1]));
        }
        return edges;
    }

    [Property(MaxTest = 300, Arbitrary = [typeof(SnapRoundingTests)])]
    public void CoversTheFrameAndHoldsEveryRequiredEdge((GridPoint A, GridPoint B)[] segments)
    {
        if (segments.Length == 0)
            return;
        var snapped = new SnapRounding(segments);
        HashSet<(int, int)> edges = Edges(snapped, segments.Length);
        ConstrainedDelaunay mesh = Build(snapped, edges);
        int n = snapped.Vertices.Length;
        Assert.Equal(2 * n + 2, mesh.Count);
        var present = new HashSet<(int, int)>();
        for (int t = 0; t < mesh.Count; t++)
        {
            (int a, int b, int c) = mesh.Corners(t);
            if (a < n && b < n && c < n)
                Assert.True(Predicates.Turn(snapped.Vertices[a], snapped.Vertices[b], snapped.Vertices[c]) > 0);
            foreach ((int p, int q) in ((int, int)[])[(a, b), (b, c), (c, a)])
                present.Add(p < q ? (p, q) : (q, p));
        }
        Assert.ProperSuperset(edges, present);
    }

    [Property(MaxTest = 200, Arbitrary = [typeof(SnapRoundingTests)])]
    public void EveryUnrequiredEdgeIsDelaunay((GridPoint A, GridPoint B)[] segments)
    {
        if (segments.Length == 0)
            return;
        var snapped = new SnapRounding(segments);
        HashSet<(int, int)> edges = Edges(snapped, segments.Length);
        ConstrainedDelaunay mesh = Build(snapped, edges);
        int n = snapped.Vertices.Length;
        for (int t = 0; t < mesh.Count; t++)
        for (int side = 0; side < 3; side++)
        {
            (int other, int from, int to) = mesh.Across(t, side);
            if (other < 0 || edges.Contains(from < to ? (from, to) : (to, from)))
                continue;
            (int a, int b, int c) = mesh.Corners(t);
            (int d, int e, int f) = mesh.Corners(other);
            int far =
                d != from && d != to ? d
                : e != from && e != to ? e
                : f;
            if (a >= n || b >= n || c >= n || far >= n)
                continue;
            Assert.True(
                Predicates.InCircle(
                    snapped.Vertices[a],
                    snapped.Vertices[b],
                    snapped.Vertices[c],
                    snapped.Vertices[far]
                ) <= 0
            );
        }
    }
}
