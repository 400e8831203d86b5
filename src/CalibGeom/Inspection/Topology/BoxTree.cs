using System.Runtime.Intrinsics;
using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Topology;

/// <summary>
/// A tree of boxes over triangles, in the order of their middles along a Morton curve, halved down to
/// <see cref="LeafSize"/>. Boxes are
/// 32-bit floats rounded outwards, so that no overlap is missed.
/// </summary>
internal sealed class BoxTree
{
    internal const int LeafSize = 4;
    private const int LeavesBetweenReports = 1024;

    private readonly int[] order;
    private readonly Vector128<float>[] low;
    private readonly Vector128<float>[] high;
    private readonly Vector128<float>[] nodeLow;
    private readonly Vector128<float>[] nodeHigh;
    private readonly int leaves;

    /// <param name="mesh">The mesh.</param>
    /// <param name="items">The triangles to take.</param>
    internal BoxTree(TriangleMesh mesh, int[] items)
    {
        order = Ordered(mesh, items);
        (low, high) = (new Vector128<float>[items.Length], new Vector128<float>[items.Length]);
        for (int i = 0; i < order.Length; i++)
            (low[i], high[i]) = BoxOf(mesh, order[i]);
        leaves = (int)
            System.Numerics.BitOperations.RoundUpToPowerOf2(
                (uint)Math.Max(1, (items.Length + LeafSize - 1) / LeafSize)
            );
        (nodeLow, nodeHigh) = (new Vector128<float>[2 * leaves], new Vector128<float>[2 * leaves]);
        for (int node = 2 * leaves - 1; node > 0; node--)
            SetNode(node);
    }

    /// <summary>
    /// Calls for each pair of triangles whose boxes meet, each pair once, until the call returns false.
    /// </summary>
    /// <param name="pair">Takes the two triangles.</param>
    /// <param name="progress">Told the finished part, 0 to 1, now and then.</param>
    internal void Pairs(Func<int, int, bool> pair, Action<double> progress)
    {
        if (order.Length > 1)
            Within(1, pair, progress);
        progress(1);
    }

    private bool Within(int node, Func<int, int, bool> pair, Action<double> progress)
    {
        if (node < leaves)
            return Within(2 * node, pair, progress)
                && Within(2 * node + 1, pair, progress)
                && Between(2 * node, 2 * node + 1, pair);
        if ((node & (LeavesBetweenReports - 1)) == 0)
            progress((double)(node - leaves) / leaves);
        (int from, int to) = Leaf(node);
        for (int i = from; i < to; i++)
        for (int j = i + 1; j < to; j++)
            if (Meet(low[i], high[i], low[j], high[j]) && !pair(order[i], order[j]))
                return false;
        return true;
    }

    private bool Between(int a, int b, Func<int, int, bool> pair)
    {
        if (!Meet(nodeLow[a], nodeHigh[a], nodeLow[b], nodeHigh[b]))
            return true;
        if (a < leaves)
            return Between(2 * a, 2 * b, pair)
                && Between(2 * a, 2 * b + 1, pair)
                && Between(2 * a + 1, 2 * b, pair)
                && Between(2 * a + 1, 2 * b + 1, pair);
        (int fromA, int toA) = Leaf(a);
        (int fromB, int toB) = Leaf(b);
        for (int i = fromA; i < toA; i++)
        {
            if (!Meet(low[i], high[i], nodeLow[b], nodeHigh[b]))
                continue;
            for (int j = fromB; j < toB; j++)
                if (Meet(low[i], high[i], low[j], high[j]) && !pair(order[i], order[j]))
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

    private static (Vector128<float> Low, Vector128<float> High) BoxOf(TriangleMesh mesh, int triangle)
    {
        (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(triangle);
        return (
            Vector128.Create(Down(Least(a.X, b.X, c.X)), Down(Least(a.Y, b.Y, c.Y)), Down(Least(a.Z, b.Z, c.Z)), 0),
            Vector128.Create(Up(Most(a.X, b.X, c.X)), Up(Most(a.Y, b.Y, c.Y)), Up(Most(a.Z, b.Z, c.Z)), 0)
        );
    }

    private static double Least(double a, double b, double c) => Math.Min(a, Math.Min(b, c));

    private static double Most(double a, double b, double c) => Math.Max(a, Math.Max(b, c));

    private static float Down(double value)
    {
        float rounded = (float)value;
        return rounded > value ? MathF.BitDecrement(rounded) : rounded;
    }

    private static float Up(double value)
    {
        float rounded = (float)value;
        return rounded < value ? MathF.BitIncrement(rounded) : rounded;
    }

    private static int[] Ordered(TriangleMesh mesh, int[] items)
    {
        Box3D bounds = mesh.Bounds;
        Vector3D size = bounds.Size;
        double scale = 1023.99 / Math.Max(Most(size.X, size.Y, size.Z), double.Epsilon);
        var keys = new ulong[items.Length];
        for (int i = 0; i < items.Length; i++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(items[i]);
            uint x = Cell((a.X + b.X + c.X) / 3 - bounds.Min.X, scale),
                y = Cell((a.Y + b.Y + c.Y) / 3 - bounds.Min.Y, scale),
                z = Cell((a.Z + b.Z + c.Z) / 3 - bounds.Min.Z, scale);
            keys[i] = (ulong)(Spread(x) | Spread(y) << 1 | Spread(z) << 2) << 32 | (uint)items[i];
        }
        Array.Sort(keys);
        return Array.ConvertAll(keys, k => (int)(uint)k);
    }

    private static uint Cell(double offset, double scale)
    {
        double cell = offset * scale;
        return cell > 0 ? (uint)Math.Min(cell, 1023) : 0;
    }

    private static uint Spread(uint v)
    {
        v = (v | v << 16) & 0x030000FF;
        v = (v | v << 8) & 0x0300F00F;
        v = (v | v << 4) & 0x030C30C3;
        return (v | v << 2) & 0x09249249;
    }
}
