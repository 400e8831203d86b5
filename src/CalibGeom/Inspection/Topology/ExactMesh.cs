using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Topology;

/// <summary>
/// Exact orientation of a mesh's vertices. Where all coordinates are whole multiples of one power of two within 2^40 of
/// it, as on the grid and in most 32-bit float files, what the floating-point filter cannot decide is decided in
/// 128-bit integers; otherwise in longer ones.
/// </summary>
internal sealed class ExactMesh
{
    private const int Bits = 40;

    private readonly double[] coordinates;
    private readonly long[]? whole;

    internal ExactMesh(TriangleMesh mesh)
    {
        coordinates = mesh.Coordinates.ToArray();
        whole = Integers(coordinates);
    }

    /// <summary>
    /// The side of the plane a, b, c on which d lies: +1 where the normal points, -1 behind, 0 in the plane.
    /// </summary>
    internal int Side(int a, int b, int c, int d)
    {
        int sign = ExactSign.Filter3D(Point(a), Point(b), Point(c), Point(d));
        if (sign != ExactSign.Unknown)
            return -sign;
        return whole is null
            ? -ExactSign.Orient3DExact(Point(a), Point(b), Point(c), Point(d))
            : Whole(whole, 3 * a, 3 * b, 3 * c, 3 * d);
    }

    /// <summary>The turn of a, b, c seen along an axis: 0 for x, 1 for y, 2 for z; counter-clockwise is +1.</summary>
    internal int Turn(int axis, int a, int b, int c)
    {
        int u = (axis + 1) % 3,
            v = (axis + 2) % 3;
        return ExactSign.Orient2D(
            coordinates[3 * a + u],
            coordinates[3 * a + v],
            coordinates[3 * b + u],
            coordinates[3 * b + v],
            coordinates[3 * c + u],
            coordinates[3 * c + v]
        );
    }

    /// <summary>An axis along which a, b, c are seen with area; -1 when they lie on a line.</summary>
    internal int AxisOf(int a, int b, int c)
    {
        for (int axis = 2; axis >= 0; axis--)
            if (Turn(axis, a, b, c) != 0)
                return axis;
        return -1;
    }

    /// <summary>
    /// Whether two triangles with a common corner are seen to lie on both sides of a plane through it, the one that
    /// halves the angle between their middles. False also where rounding could tell it wrong.
    /// </summary>
    internal bool IsParted(int corner, int a1, int a2, int b1, int b2)
    {
        Vector3D p = Point(corner),
            wayA1 = Point(a1) - p,
            wayA2 = Point(a2) - p,
            wayB1 = Point(b1) - p,
            wayB2 = Point(b2) - p;
        Vector3D plane =
            wayA1 * (1 / wayA1.Length)
            + wayA2 * (1 / wayA2.Length)
            - wayB1 * (1 / wayB1.Length)
            - wayB2 * (1 / wayB2.Length);
        // Ways are wrong by half a unit in the last place of the coordinates, products by no more.
        double unsure = 1e-14 * plane.Length * (Largest(p) + wayA1.Length + wayA2.Length + wayB1.Length + wayB2.Length);
        return Vector3D.Dot(plane, wayA1) > unsure
            && Vector3D.Dot(plane, wayA2) > unsure
            && Vector3D.Dot(plane, wayB1) < -unsure
            && Vector3D.Dot(plane, wayB2) < -unsure;
    }

    private static double Largest(Vector3D p) => Math.Max(Math.Abs(p.X), Math.Max(Math.Abs(p.Y), Math.Abs(p.Z)));

    internal Vector3D Point(int v) => new(coordinates[3 * v], coordinates[3 * v + 1], coordinates[3 * v + 2]);

    private static int Whole(long[] w, int a, int b, int c, int d)
    {
        Int128 ax = w[a] - w[d],
            ay = w[a + 1] - w[d + 1],
            az = w[a + 2] - w[d + 2];
        Int128 bx = w[b] - w[d],
            by = w[b + 1] - w[d + 1],
            bz = w[b + 2] - w[d + 2];
        Int128 cx = w[c] - w[d],
            cy = w[c + 1] - w[d + 1],
            cz = w[c + 2] - w[d + 2];
        return -Int128.Sign(az * (bx * cy - cx * by) + bz * (cx * ay - ax * cy) + cz * (ax * by - bx * ay));
    }

    private static long[]? Integers(double[] values)
    {
        int least = int.MaxValue;
        double largest = 0;
        foreach (double value in values)
        {
            if (value == 0)
                continue;
            long mantissa = ExactSign.Mantissa(value);
            least = Math.Min(
                least,
                ExactSign.Exponent(value) + System.Numerics.BitOperations.TrailingZeroCount(mantissa)
            );
            largest = Math.Max(largest, Math.Abs(value));
        }
        if (largest == 0)
            return new long[values.Length];
        if (Math.ILogB(largest) - least >= Bits)
            return null;
        var integers = new long[values.Length];
        for (int i = 0; i < values.Length; i++)
            integers[i] = (long)Math.ScaleB(values[i], -least);
        return integers;
    }
}
