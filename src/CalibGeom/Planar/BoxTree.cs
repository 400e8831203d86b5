using System.Buffers;
using System.Numerics;
using System.Runtime.Intrinsics;

namespace CalibGeom.Planar;

/// <summary>
/// A tree of boxes in the order of their middles along a Morton curve, halved down to <see cref="LeafSize"/>: finds the
/// pairs of boxes that meet, in one set or between two, and what is nearest. Grid values are exact in it; other numbers
/// must be rounded outwards by the caller, so that no pair is missed.
/// </summary>
internal sealed partial class BoxTree
{
    internal const int LeafSize = 4;

    // Fewer segments are told apart as fast by their bounds along the axes alone.
    private const int Many = 256;

    // Subtrees in the work of all cores together.
    private const int Parts = 32;

    private readonly int[] order;
    private readonly Vector128<float>[] low;
    private readonly Vector128<float>[] high;
    private readonly Vector128<float>[] nodeLow;
    private readonly Vector128<float>[] nodeHigh;
    private readonly int leaves;
    private TurnedBox[] turned = [];

    /// <param name="boxes">Lower and upper corners; the fourth number must be 0 in both.</param>
    internal BoxTree(ReadOnlySpan<(Vector128<float> Low, Vector128<float> High)> boxes)
    {
        int count = boxes.Length;
        order = Ordered(boxes);
        (low, high) = (new Vector128<float>[count], new Vector128<float>[count]);
        for (int i = 0; i < count; i++)
            (low[i], high[i]) = boxes[order[i]];
        leaves = (int)BitOperations.RoundUpToPowerOf2((uint)Math.Max(1, (count + LeafSize - 1) / LeafSize));
        (nodeLow, nodeHigh) = (new Vector128<float>[2 * leaves], new Vector128<float>[2 * leaves]);
        for (int node = 2 * leaves - 1; node > 0; node--)
            SetNode(node);
    }

    /// <summary>The box of a segment on the grid.</summary>
    internal static (Vector128<float>, Vector128<float>) Box(GridPoint a, GridPoint b)
    {
        Vector128<float> p = Vector128.Create((float)a.X, a.Y, 0, 0),
            q = Vector128.Create((float)b.X, b.Y, 0, 0);
        return (Vector128.Min(p, q), Vector128.Max(p, q));
    }

    /// <summary>The bounds of a ring's edges; edge i ends in point i.</summary>
    internal static BoxTree OfRing(ReadOnlySpan<GridPoint> ring)
    {
        var edges = new (GridPoint, GridPoint)[ring.Length];
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
            edges[i] = (ring[j], ring[i]);
        return OfSegments(edges);
    }

    /// <summary>
    /// The bounds of segments or points. Between two such trees, and within one, pairs may be left out whose bounds
    /// meet but which do not come within a grid unit of each other.
    /// </summary>
    internal static BoxTree OfSegments(ReadOnlySpan<(GridPoint A, GridPoint B)> segments)
    {
        (Vector128<float>, Vector128<float>)[] boxes = ArrayPool<(Vector128<float>, Vector128<float>)>.Shared.Rent(
            segments.Length
        );
        for (int i = 0; i < segments.Length; i++)
            boxes[i] = Box(segments[i].A, segments[i].B);
        var tree = new BoxTree(boxes.AsSpan(0, segments.Length));
        ArrayPool<(Vector128<float>, Vector128<float>)>.Shared.Return(boxes);
        if (segments.Length >= Many)
            tree.Turn(segments);
        return tree;
    }

    /// <summary> Calls for each pair of boxes that meet, each pair once, until the call returns false. </summary>
    /// <param name="pair">Takes the numbers of two boxes.</param>
    internal void Pairs(Func<int, int, bool> pair)
    {
        if (order.Length > 1)
            Within(1, pair);
    }

    /// <summary>The pairs of boxes that meet in parts, each of which may be gone through on another core.</summary>
    internal IReadOnlyList<Action<Func<int, int, bool>>> PairsInParts()
    {
        var parts = new List<Action<Func<int, int, bool>>>();
        if (order.Length > 1)
            Split(1, parts);
        return parts;
    }

    private void Split(int node, List<Action<Func<int, int, bool>>> parts)
    {
        if (node >= Math.Min(Parts, leaves))
        {
            parts.Add(pair => Within(node, pair));
            return;
        }
        Split(2 * node, parts);
        Split(2 * node + 1, parts);
        parts.Add(pair => Across(2 * node, this, 2 * node + 1, pair));
    }

    /// <summary>
    /// Calls for each pair of a box here and one of another tree that meet, until the call returns false.
    /// </summary>
    internal void Pairs(BoxTree other, Func<int, int, bool> pair)
    {
        if (order.Length > 0 && other.order.Length > 0)
            Across(1, other, 1, pair);
    }

    /// <summary>Calls for each box here that meets a box.</summary>
    internal void Meeting((Vector128<float> Low, Vector128<float> High) box, Action<int> found)
    {
        if (order.Length > 0)
            Meeting(1, box.Low, box.High, found);
    }

    /// <summary>
    /// Calls for each box here that meets what a test knows; it is asked of boxes round several, too.
    /// </summary>
    internal void Meeting(Func<Vector128<float>, Vector128<float>, bool> meets, Action<int> found)
    {
        if (order.Length > 0)
            Meeting(1, meets, found);
    }

    private void Meeting(int node, Func<Vector128<float>, Vector128<float>, bool> meets, Action<int> found)
    {
        if (nodeLow[node][0] > nodeHigh[node][0] || !meets(nodeLow[node], nodeHigh[node]))
            return;
        if (node < leaves)
        {
            Meeting(2 * node, meets, found);
            Meeting(2 * node + 1, meets, found);
            return;
        }
        (int first, int end) = Leaf(node);
        for (int i = first; i < end; i++)
            if (meets(low[i], high[i]))
                found(order[i]);
    }

    private void Meeting(int node, Vector128<float> from, Vector128<float> to, Action<int> found)
    {
        if (!Meet(nodeLow[node], nodeHigh[node], from, to))
            return;
        if (node < leaves)
        {
            Meeting(2 * node, from, to, found);
            Meeting(2 * node + 1, from, to, found);
            return;
        }
        (int first, int end) = Leaf(node);
        for (int i = first; i < end; i++)
            if (Meet(low[i], high[i], from, to))
                found(order[i]);
    }

    private bool Within(int node, Func<int, int, bool> pair)
    {
        if (node < leaves)
            return Within(2 * node, pair) && Within(2 * node + 1, pair) && Across(2 * node, this, 2 * node + 1, pair);
        (int from, int to) = Leaf(node);
        for (int i = from; i < to; i++)
        for (int j = i + 1; j < to; j++)
            if (Meet(low[i], high[i], low[j], high[j]) && !pair(order[i], order[j]))
                return false;
        return true;
    }

    private bool Across(int a, BoxTree other, int b, Func<int, int, bool> pair)
    {
        if (!Meet(nodeLow[a], nodeHigh[a], other.nodeLow[b], other.nodeHigh[b]))
            return true;
        if (turned.Length > 0 && other.turned.Length > 0 && !turned[a].Meets(other.turned[b]))
            return true;
        if (a < leaves && b < other.leaves)
            return Across(2 * a, other, 2 * b, pair)
                && Across(2 * a, other, 2 * b + 1, pair)
                && Across(2 * a + 1, other, 2 * b, pair)
                && Across(2 * a + 1, other, 2 * b + 1, pair);
        if (a < leaves)
            return Across(2 * a, other, b, pair) && Across(2 * a + 1, other, b, pair);
        if (b < other.leaves)
            return Across(a, other, 2 * b, pair) && Across(a, other, 2 * b + 1, pair);
        (int fromA, int toA) = Leaf(a);
        (int fromB, int toB) = other.Leaf(b);
        for (int i = fromA; i < toA; i++)
        {
            if (!Meet(low[i], high[i], other.nodeLow[b], other.nodeHigh[b]))
                continue;
            for (int j = fromB; j < toB; j++)
                if (Meet(low[i], high[i], other.low[j], other.high[j]) && !pair(order[i], other.order[j]))
                    return false;
        }
        return true;
    }

    private static bool Meet(
        Vector128<float> lowA,
        Vector128<float> highA,
        Vector128<float> lowB,
        Vector128<float> highB
    ) => Vector128.LessThanOrEqualAll(Vector128.Max(lowA, lowB), Vector128.Min(highA, highB));

    private (int From, int To) Leaf(int node)
    {
        int from = (node - leaves) * LeafSize;
        return (Math.Min(from, order.Length), Math.Min(from + LeafSize, order.Length));
    }

    // An empty node's box is inside out and meets nothing.
    private void SetNode(int node)
    {
        Vector128<float> min = Vector128.Create(float.PositiveInfinity),
            max = Vector128.Create(float.NegativeInfinity);
        if (node < leaves)
        {
            min = Vector128.Min(nodeLow[2 * node], nodeLow[2 * node + 1]);
            max = Vector128.Max(nodeHigh[2 * node], nodeHigh[2 * node + 1]);
        }
        else
        {
            (int from, int to) = Leaf(node);
            for (int i = from; i < to; i++)
                (min, max) = (Vector128.Min(min, low[i]), Vector128.Max(max, high[i]));
        }
        (nodeLow[node], nodeHigh[node]) = (min, max);
    }

    private void Turn(ReadOnlySpan<(GridPoint A, GridPoint B)> segments)
    {
        turned = new TurnedBox[2 * leaves];
        Span<(GridPoint, GridPoint)> held = stackalloc (GridPoint, GridPoint)[LeafSize];
        for (int node = 2 * leaves - 1; node > 0; node--)
        {
            // Nothing comes to an empty node: its bounds meet nothing.
            if (nodeLow[node][0] > nodeHigh[node][0])
                continue;
            if (node < leaves)
            {
                bool one = nodeLow[2 * node + 1][0] > nodeHigh[2 * node + 1][0];
                turned[node] = one ? turned[2 * node] : TurnedBox.Round(turned[2 * node], turned[2 * node + 1]);
                continue;
            }
            (int from, int to) = Leaf(node);
            for (int i = from; i < to; i++)
                held[i - from] = segments[order[i]];
            turned[node] = TurnedBox.Round(held[..(to - from)]);
        }
    }

    private static int[] Ordered(ReadOnlySpan<(Vector128<float> Low, Vector128<float> High)> boxes)
    {
        Vector128<float> min = Vector128.Create(float.PositiveInfinity),
            max = Vector128.Create(float.NegativeInfinity);
        foreach ((Vector128<float> low, Vector128<float> high) in boxes)
            (min, max) = (Vector128.Min(min, low), Vector128.Max(max, high));
        Vector128<float> size = max - min;
        float scale = 1023.99f / Math.Max(Math.Max(size[0], Math.Max(size[1], size[2])), float.Epsilon);
        ulong[] rented = ArrayPool<ulong>.Shared.Rent(boxes.Length);
        Span<ulong> keys = rented.AsSpan(0, boxes.Length);
        for (int i = 0; i < keys.Length; i++)
        {
            Vector128<float> middle = (boxes[i].Low + boxes[i].High) * 0.5f - min;
            uint x = Cell(middle[0], scale),
                y = Cell(middle[1], scale),
                z = Cell(middle[2], scale);
            keys[i] = (ulong)(Spread(x) | Spread(y) << 1 | Spread(z) << 2) << 32 | (uint)i;
        }
        keys.Sort();
        var sorted = new int[keys.Length];
        for (int i = 0; i < sorted.Length; i++)
            sorted[i] = (int)(uint)keys[i];
        ArrayPool<ulong>.Shared.Return(rented);
        return sorted;
    }

    private static uint Cell(float offset, float scale)
    {
        float cell = offset * scale;
        return cell > 0 ? (uint)Math.Min(cell, 1023f) : 0;
    }

    private static uint Spread(uint v)
    {
        v = (v | v << 16) & 0x030000FF;
        v = (v | v << 8) & 0x0300F00F;
        v = (v | v << 4) & 0x030C30C3;
        return (v | v << 2) & 0x09249249;
    }
}
