namespace CalibGeom.Meshes;

/// <summary>
/// Joins the segments in which triangles cross a plane into closed chains. A segment runs from one mesh edge to
/// another; in a closed mesh as many segments leave an edge as arrive at it, so chains close whatever the number of
/// faces at the edge. Where they do not, the open end is joined to the chain's start and counted as a gap.
/// </summary>
internal sealed class SectionLinker
{
    private readonly int[] leaving;
    private readonly int[] balance;
    private readonly List<(int From, int To, int Next)> segments = [];

    internal SectionLinker(int edgeCount)
    {
        leaving = new int[edgeCount];
        balance = new int[edgeCount];
        Array.Fill(leaving, -1);
    }

    /// <summary>The edges that the chains pass, chain after chain.</summary>
    internal List<int> Nodes { get; } = [];

    /// <summary>For each chain the index in <see cref="Nodes"/> just after its last node.</summary>
    internal List<int> Ends { get; } = [];

    /// <summary>For each chain whether it closes by itself.</summary>
    internal List<bool> Closed { get; } = [];

    /// <summary>
    /// Adds the segment in which a triangle crosses the plane, with material on its left seen against the plane's
    /// normal.
    /// </summary>
    internal void AddTriangle(ReadOnlySpan<int> edges, bool aboveA, bool aboveB, bool aboveC)
    {
        if (aboveA == aboveB && aboveB == aboveC)
            return;
        int down =
            aboveA && !aboveB ? 0
            : aboveB && !aboveC ? 1
            : 2;
        int up =
            !aboveA && aboveB ? 0
            : !aboveB && aboveC ? 1
            : 2;
        int from = edges[down],
            to = edges[up];
        segments.Add((from, to, leaving[from]));
        leaving[from] = segments.Count - 1;
        balance[from]++;
        balance[to]--;
    }

    /// <summary>Joins all segments added so far and forgets them.</summary>
    internal void Link()
    {
        Nodes.Clear();
        Ends.Clear();
        Closed.Clear();
        // Chains that cannot close start where more segments leave than arrive.
        for (int s = 0; s < segments.Count; s++)
            while (balance[segments[s].From] > 0)
                Follow(segments[s].From);
        for (int s = 0; s < segments.Count; s++)
            while (leaving[segments[s].From] >= 0)
                Follow(segments[s].From);
        foreach ((int from, int to, _) in segments)
            balance[from] = balance[to] = 0;
        segments.Clear();
    }

    private void Follow(int start)
    {
        int node = start;
        bool open = balance[start] > 0;
        if (open)
            balance[start]--;
        do
        {
            Nodes.Add(node);
            int segment = leaving[node];
            leaving[node] = segments[segment].Next;
            node = segments[segment].To;
        } while ((open || node != start) && leaving[node] >= 0);
        if (node != start)
        {
            Nodes.Add(node);
            open = true;
        }
        Ends.Add(Nodes.Count);
        Closed.Add(!open || node == start);
    }
}
