using System.Runtime.Intrinsics;

namespace CalibGeom.Planar;

internal sealed partial class BoxTree
{
    /// <summary>
    /// The least distance to anything here, or a limit when none is less; the nearer half of each node is asked first.
    /// </summary>
    internal double Least<T>(T measure, double limit)
        where T : struct, IBoxMeasure
    {
        if (order.Length > 0 && measure.Gap(nodeLow[1], nodeHigh[1]) < limit)
            Least(1, ref measure, ref limit);
        return limit;
    }

    /// <summary>The least distance between anything here and in another tree, or a limit when none is less.</summary>
    internal double Least<T>(BoxTree other, T measure, double limit)
        where T : struct, IBoxPairMeasure
    {
        if (order.Length > 0 && other.order.Length > 0 && Gap(1, other, 1, ref measure) < limit)
            Least(1, other, 1, ref measure, ref limit);
        return limit;
    }

    /// <summary>The squared distance between two boxes; infinite where one is inside out.</summary>
    internal static double SquaredGap(
        Vector128<float> low,
        Vector128<float> high,
        Vector128<float> otherLow,
        Vector128<float> otherHigh
    )
    {
        // As doubles: the difference of two floats of different size would be rounded, and a nearest one missed.
        Vector256<double> gap = Vector256.Max(
            Vector256.Max(Wide(low) - Wide(otherHigh), Wide(otherLow) - Wide(high)),
            Vector256<double>.Zero
        );
        return Vector256.Dot(gap, gap);

        static Vector256<double> Wide(Vector128<float> v) => Vector256.WidenLower(v.ToVector256Unsafe());
    }

    private void Least<T>(int node, ref T measure, ref double best)
        where T : struct, IBoxMeasure
    {
        if (node < leaves)
        {
            int near = 2 * node,
                far = near + 1;
            double nearGap = measure.Gap(nodeLow[near], nodeHigh[near]),
                farGap = measure.Gap(nodeLow[far], nodeHigh[far]);
            if (farGap < nearGap)
                (near, nearGap, far, farGap) = (far, farGap, near, nearGap);
            if (nearGap < best)
                Least(near, ref measure, ref best);
            if (farGap < best)
                Least(far, ref measure, ref best);
            return;
        }
        (int from, int to) = Leaf(node);
        for (int i = from; i < to; i++)
            if (measure.Gap(low[i], high[i]) < best)
                best = Math.Min(best, measure.Distance(order[i]));
    }

    private void Least<T>(int node, BoxTree other, int otherNode, ref T measure, ref double best)
        where T : struct, IBoxPairMeasure
    {
        bool splits = node < leaves,
            otherSplits = otherNode < other.leaves;
        if (!splits && !otherSplits)
        {
            LeastOfLeaves(node, other, otherNode, ref measure, ref best);
            return;
        }
        // The larger of the two is halved.
        bool here = splits && (!otherSplits || Extent(node) >= other.Extent(otherNode));
        (int near, int otherNear) = here ? (2 * node, otherNode) : (node, 2 * otherNode);
        (int far, int otherFar) = here ? (near + 1, otherNode) : (node, otherNear + 1);
        double nearGap = Gap(near, other, otherNear, ref measure),
            farGap = Gap(far, other, otherFar, ref measure);
        if (farGap < nearGap)
            (near, otherNear, nearGap, far, otherFar, farGap) = (far, otherFar, farGap, near, otherNear, nearGap);
        if (nearGap < best)
            Least(near, other, otherNear, ref measure, ref best);
        if (farGap < best)
            Least(far, other, otherFar, ref measure, ref best);
    }

    private void LeastOfLeaves<T>(int node, BoxTree other, int otherNode, ref T measure, ref double best)
        where T : struct, IBoxPairMeasure
    {
        (int from, int to) = Leaf(node);
        (int otherFrom, int otherTo) = other.Leaf(otherNode);
        for (int i = from; i < to; i++)
        for (int k = otherFrom; k < otherTo; k++)
            if (measure.Gap(low[i], high[i], other.low[k], other.high[k]) < best)
                best = Math.Min(best, measure.Distance(order[i], other.order[k]));
    }

    private double Gap<T>(int node, BoxTree other, int otherNode, ref T measure)
        where T : struct, IBoxPairMeasure =>
        measure.Gap(nodeLow[node], nodeHigh[node], other.nodeLow[otherNode], other.nodeHigh[otherNode]);

    private float Extent(int node) => Vector128.Sum(nodeHigh[node] - nodeLow[node]);
}
