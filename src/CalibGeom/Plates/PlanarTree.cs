namespace CalibGeom.Plates;

/// <summary>
/// Triangles of the plane in a bounding volume hierarchy, for distances between sets of them. Safe to share between
/// threads.
/// </summary>
internal sealed class PlanarTree
{
    private const int LeafSize = 4;

    private readonly double[] triangles;
    private readonly List<double> boxes = [];
    private readonly List<(int First, int Count, int Right)> nodes = [];

    /// <summary>A tree; the array (six coordinates a triangle) is taken over and reordered.</summary>
    internal PlanarTree(double[] triangles)
    {
        this.triangles = triangles;
        int count = triangles.Length / 6;
        if (count == 0)
            return;
        int[] order = Enumerable.Range(0, count).ToArray();
        Build(order, 0, count);
        double[] source = (double[])triangles.Clone();
        for (int i = 0; i < count; i++)
            Array.Copy(source, 6 * order[i], triangles, 6 * i, 6);
    }

    internal bool IsEmpty => nodes.Count == 0;

    internal double MinX => boxes[0];

    internal double MinY => boxes[1];

    internal double MaxX => boxes[2];

    internal double MaxY => boxes[3];

    /// <summary>The six coordinates of each triangle.</summary>
    internal ReadOnlySpan<double> Triangles => triangles;

    /// <summary>
    /// The distance to another tree moved by (dx, dy), or <paramref name="limit"/> when it is no less.
    /// </summary>
    internal double Distance(PlanarTree other, double dx, double dy, double limit)
    {
        if (IsEmpty || other.IsEmpty)
            return limit;
        double best = limit * limit;
        Descend(other, 0, 0, dx, dy, ref best);
        return best < limit * limit ? Math.Sqrt(best) : limit;
    }

    /// <summary>The distance to a point, or <paramref name="limit"/> when it is no less.</summary>
    internal double Distance(double x, double y, double limit)
    {
        if (IsEmpty)
            return limit;
        double best = limit * limit;
        Descend(0, x, y, ref best);
        return best < limit * limit ? Math.Sqrt(best) : limit;
    }

    private void Descend(PlanarTree other, int node, int otherNode, double dx, double dy, ref double best)
    {
        if (best == 0 || Gap(other, node, otherNode, dx, dy) >= best)
            return;
        (int first, int count, int right) = nodes[node];
        (int otherFirst, int otherCount, int otherRight) = other.nodes[otherNode];
        if (count > 0 && otherCount > 0)
        {
            for (int i = first; i < first + count; i++)
            for (int k = otherFirst; k < otherFirst + otherCount; k++)
                best = Math.Min(
                    best,
                    PlanarDistance.Squared(triangles.AsSpan(6 * i, 6), other.triangles.AsSpan(6 * k, 6), dx, dy)
                );
        }
        else if (otherCount > 0 || (count == 0 && Extent(node) >= other.Extent(otherNode)))
        {
            bool near = Gap(other, node + 1, otherNode, dx, dy) <= Gap(other, right, otherNode, dx, dy);
            Descend(other, near ? node + 1 : right, otherNode, dx, dy, ref best);
            Descend(other, near ? right : node + 1, otherNode, dx, dy, ref best);
        }
        else
        {
            bool near = Gap(other, node, otherNode + 1, dx, dy) <= Gap(other, node, otherRight, dx, dy);
            Descend(other, node, near ? otherNode + 1 : otherRight, dx, dy, ref best);
            Descend(other, node, near ? otherRight : otherNode + 1, dx, dy, ref best);
        }
    }

    private void Descend(int node, double x, double y, ref double best)
    {
        double gx = Math.Max(0, Math.Max(boxes[4 * node] - x, x - boxes[4 * node + 2]));
        double gy = Math.Max(0, Math.Max(boxes[4 * node + 1] - y, y - boxes[4 * node + 3]));
        if (gx * gx + gy * gy >= best)
            return;
        (int first, int count, int right) = nodes[node];
        for (int i = first; i < first + count; i++)
            best = Math.Min(best, PlanarDistance.Squared(triangles.AsSpan(6 * i, 6), x, y));
        if (count > 0)
            return;
        Descend(node + 1, x, y, ref best);
        Descend(right, x, y, ref best);
    }

    private double Gap(PlanarTree other, int node, int otherNode, double dx, double dy)
    {
        int a = 4 * node,
            b = 4 * otherNode;
        double gx = Math.Max(0, Math.Max(boxes[a] - other.boxes[b + 2] - dx, other.boxes[b] + dx - boxes[a + 2]));
        double gy = Math.Max(
            0,
            Math.Max(boxes[a + 1] - other.boxes[b + 3] - dy, other.boxes[b + 1] + dy - boxes[a + 3])
        );
        return gx * gx + gy * gy;
    }

    private double Extent(int node) =>
        boxes[4 * node + 2] - boxes[4 * node] + boxes[4 * node + 3] - boxes[4 * node + 1];

    private int Build(int[] order, int first, int count)
    {
        int node = nodes.Count;
        AddBox(order, first, count);
        nodes.Add((first, count <= LeafSize ? count : 0, 0));
        if (count <= LeafSize)
            return node;
        bool byX = boxes[4 * node + 2] - boxes[4 * node] >= boxes[4 * node + 3] - boxes[4 * node + 1];
        double[] keys = new double[count];
        for (int i = 0; i < count; i++)
        {
            int t = 6 * order[first + i] + (byX ? 0 : 1);
            keys[i] = triangles[t] + triangles[t + 2] + triangles[t + 4];
        }
        keys.AsSpan().Sort(order.AsSpan(first, count));
        Build(order, first, count / 2);
        int right = Build(order, first + count / 2, count - count / 2);
        nodes[node] = (first, 0, right);
        return node;
    }

    private void AddBox(int[] order, int first, int count)
    {
        double minX = double.PositiveInfinity,
            minY = minX,
            maxX = double.NegativeInfinity,
            maxY = maxX;
        for (int i = first; i < first + count; i++)
        for (int k = 6 * order[i]; k < 6 * order[i] + 6; k += 2)
        {
            (minX, maxX) = (Math.Min(minX, triangles[k]), Math.Max(maxX, triangles[k]));
            (minY, maxY) = (Math.Min(minY, triangles[k + 1]), Math.Max(maxY, triangles[k + 1]));
        }
        boxes.AddRange([minX, minY, maxX, maxY]);
    }
}
