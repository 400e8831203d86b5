using System.Runtime.Intrinsics;
using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Plates;

/// <summary>Triangles of the plane, for distances between sets of them. Safe to share between threads.</summary>
internal sealed class PlanarTriangles
{
    private readonly double[] triangles;
    private readonly BoxTree tree;

    /// <summary>A set; the array (six coordinates a triangle) is taken over.</summary>
    internal PlanarTriangles(double[] triangles)
    {
        this.triangles = triangles;
        var boxes = new (Vector128<float>, Vector128<float>)[triangles.Length / 6];
        for (int i = 0; i < boxes.Length; i++)
            boxes[i] = BoxOf(triangles.AsSpan(6 * i, 6));
        tree = new BoxTree(boxes);
        (MinX, MinY, MaxX, MaxY) = (Least(0), Least(1), -Least(0, -1), -Least(1, -1));
    }

    internal bool IsEmpty => triangles.Length == 0;

    internal double MinX { get; }

    internal double MinY { get; }

    internal double MaxX { get; }

    internal double MaxY { get; }

    /// <summary>The six coordinates of each triangle.</summary>
    internal ReadOnlySpan<double> Triangles => triangles;

    /// <summary>
    /// The distance to another set moved by (dx, dy), or <paramref name="limit"/> when it is no less.
    /// </summary>
    internal double Distance(PlanarTriangles other, double dx, double dy, double limit) =>
        Root(tree.Least(other.tree, new Between(triangles, other.triangles, dx, dy), limit * limit), limit);

    /// <summary>The distance to a point, or <paramref name="limit"/> when it is no less.</summary>
    internal double Distance(double x, double y, double limit) =>
        Root(tree.Least(new ToPoint(triangles, x, y), limit * limit), limit);

    private static double Root(double best, double limit) => best < limit * limit ? Math.Sqrt(best) : limit;

    private static (Vector128<float>, Vector128<float>) BoxOf(ReadOnlySpan<double> t)
    {
        Vector3D a = new(t[0], t[1], 0),
            b = new(t[2], t[3], 0),
            c = new(t[4], t[5], 0);
        return TriangleBoxes.BoxOf(Vector3D.Least(a, Vector3D.Least(b, c)), Vector3D.Most(a, Vector3D.Most(b, c)));
    }

    private double Least(int axis, int sign = 1)
    {
        double least = double.PositiveInfinity;
        for (int k = axis; k < triangles.Length; k += 2)
            least = Math.Min(least, sign * triangles[k]);
        return least;
    }

    private static double Beyond(double low, double high, double otherLow, double otherHigh) =>
        Math.Max(0, Math.Max(low - otherHigh, otherLow - high));

    /// <summary>The squared distance to a point.</summary>
    private readonly struct ToPoint(double[] triangles, double x, double y) : IBoxMeasure
    {
        public double Gap(Vector128<float> low, Vector128<float> high)
        {
            double gx = Beyond(low[0], high[0], x, x),
                gy = Beyond(low[1], high[1], y, y);
            return gx * gx + gy * gy;
        }

        public double Distance(int item) => PlanarDistance.Squared(triangles.AsSpan(6 * item, 6), x, y);
    }

    /// <summary>The squared distance between two sets of which the second is moved.</summary>
    private readonly struct Between(double[] triangles, double[] others, double dx, double dy) : IBoxPairMeasure
    {
        public double Gap(
            Vector128<float> low,
            Vector128<float> high,
            Vector128<float> otherLow,
            Vector128<float> otherHigh
        )
        {
            double gx = Beyond(low[0], high[0], otherLow[0] + dx, otherHigh[0] + dx),
                gy = Beyond(low[1], high[1], otherLow[1] + dy, otherHigh[1] + dy);
            return gx * gx + gy * gy;
        }

        public double Distance(int item, int other) =>
            PlanarDistance.Squared(triangles.AsSpan(6 * item, 6), others.AsSpan(6 * other, 6), dx, dy);
    }
}
