namespace CalibGeom.Planar;

internal sealed partial class ConstrainedDelaunay
{
    /// <summary>
    /// Makes all edges of a table present, in its order, and tells where they are: the number of the edge on side i of
    /// triangle t at 3t + i, -1 where there is none. No other point may lie on one, and none may cross another.
    /// </summary>
    internal int[] Require(EdgeTable edges)
    {
        for (int edge = 0; edge < edges.Count; edge++)
            MakePresent(edges, edge);
        var places = new int[3 * Count];
        Array.Fill(places, -1);
        for (int edge = 0; edge < edges.Count; edge++)
        {
            (int t, int side) = Find(edges[edge].From, edges[edge].To);
            int other = neighbours[3 * t + side];
            places[3 * t + side] = places[3 * other + SideTo(other, t)] = edge;
        }
        return places;
    }

    private void MakePresent(EdgeTable edges, int edge)
    {
        (int a, int b) = edges[edge];
        fresh.Clear();
        Cross(a, b);
        while (crossing.TryDequeue(out (int, int) crossed))
        {
            (int t, int side) = Find(crossed.Item1, crossed.Item2);
            if (!IsConvex(t, side))
            {
                crossing.Enqueue(crossed);
                continue;
            }
            int p = corners[3 * t + side],
                q = Opposite(t, side);
            Flip(t, side);
            if (Straddle(p, q, a, b))
                crossing.Enqueue((p, q));
            else if (Key(p, q) != Key(a, b))
                fresh.Add((p, q));
        }
        RestoreDelaunay(fresh, edges, edge);
    }

    /// <summary>Puts the edges that the segment a-b crosses, from a to b, into the queue.</summary>
    private void Cross(int a, int b)
    {
        (int t, int side) = Departure(a, b);
        if (t < 0)
            return;
        while (true)
        {
            (int next, int from, int to) = Across(t, side);
            crossing.Enqueue((from, to));
            int far = Opposite(t, side);
            if (far == b)
                return;
            int at = IndexOf(next, far);
            (t, side) = (next, Straddles(next, (at + 1) % 3, a, b) ? (at + 1) % 3 : (at + 2) % 3);
        }
    }

    /// <summary>
    /// The triangle at a through whose far side the segment a-b leaves; -1 when the edge is there already.
    /// </summary>
    private (int Triangle, int Side) Departure(int a, int b)
    {
        int start = triangleAt[a],
            t = start;
        do
        {
            int side = IndexOf(t, a);
            (_, int from, int to) = Across(t, side);
            if (from == b || to == b)
                return (-1, -1);
            if (
                Predicates.Turn(points[a], points[from], points[b]) > 0
                && Predicates.Turn(points[a], points[to], points[b]) < 0
            )
                return (t, side);
            t = neighbours[3 * t + (side + 1) % 3];
        } while (t != start && t >= 0);
        throw new InvalidOperationException($"No triangle at {points[a]} faces {points[b]}.");
    }

    /// <summary>
    /// A triangle and its side that is the edge a-b; one end must not be a corner of the frame, whose fan is open.
    /// </summary>
    private (int Triangle, int Side) Find(int a, int b)
    {
        if (a >= realCount)
            (a, b) = (b, a);
        int start = triangleAt[a],
            t = start;
        do
        {
            int at = IndexOf(t, a);
            if (corners[3 * t + (at + 1) % 3] == b)
                return (t, (at + 2) % 3);
            if (corners[3 * t + (at + 2) % 3] == b)
                return (t, (at + 1) % 3);
            t = neighbours[3 * t + (at + 1) % 3];
        } while (t != start && t >= 0);
        throw new InvalidOperationException($"No edge from {points[a]} to {points[b]}.");
    }

    private bool Straddles(int t, int side, int a, int b)
    {
        (_, int from, int to) = Across(t, side);
        return Straddle(from, to, a, b);
    }

    /// <summary>Whether p and q lie strictly on different sides of the line through a and b.</summary>
    private bool Straddle(int p, int q, int a, int b) =>
        Predicates.Turn(points[a], points[b], points[p]) * Predicates.Turn(points[a], points[b], points[q]) < 0;

    private int Opposite(int t, int side)
    {
        int other = neighbours[3 * t + side];
        return corners[3 * other + SideTo(other, t)];
    }

    private bool IsConvex(int t, int side)
    {
        (_, int from, int to) = Across(t, side);
        GridPoint p = points[corners[3 * t + side]],
            q = points[Opposite(t, side)];
        return Predicates.Turn(p, points[from], q) > 0 && Predicates.Turn(p, q, points[to]) > 0;
    }

    /// <summary>
    /// Flips new edges until they are Delaunay; those of a table stay, from its first to one that was just made
    /// present.
    /// </summary>
    private void RestoreDelaunay(List<(int, int)> edges, EdgeTable required, int newest)
    {
        bool changed = true;
        while (changed)
        {
            changed = false;
            for (int i = 0; i < edges.Count; i++)
            {
                (int a, int b) = edges[i];
                (int low, int high) = Key(a, b);
                if ((uint)required.Find(low, high) <= (uint)newest)
                    continue;
                (int t, int side) = Find(a, b);
                if (neighbours[3 * t + side] < 0 || !IsConvex(t, side))
                    continue;
                (int p, int q, int r) = Corners(t);
                int far = Opposite(t, side);
                if (Predicates.InCircle(points[p], points[q], points[r], points[far]) <= 0)
                    continue;
                edges[i] = (corners[3 * t + side], far);
                Flip(t, side);
                changed = true;
            }
        }
    }
}
