using System.Numerics;

namespace CalibGeom.Meshes;

/// <summary>
/// The exact signs of the two orientation determinants for any finite doubles: a floating-point filter with Shewchuk's
/// forward error bounds (Adaptive Precision Floating-Point Arithmetic, 1997), and integers of any length where the
/// filter cannot tell.
/// </summary>
internal static class ExactSign
{
    // (3 + 16 u) u and (7 + 56 u) u with u = 2^-53.
    private const double Bound2D = 3.3306690738754716e-16;
    private const double Bound3D = 7.771561172376103e-16;

    // Below this the products may have lost bits to underflow, which the bounds do not cover.
    private const double Tiny = 1e-280;

    /// <summary>+1 when a, b, c turn left, -1 when right, 0 on a line.</summary>
    internal static int Orient2D(double ax, double ay, double bx, double by, double cx, double cy)
    {
        double left = (ax - cx) * (by - cy),
            right = (ay - cy) * (bx - cx);
        double sum = left - right,
            size = Math.Abs(left) + Math.Abs(right);
        if (size > Tiny && Math.Abs(sum) > Bound2D * size)
            return Math.Sign(sum);
        if ((ax == cx || by == cy) && (ay == cy || bx == cx))
            return 0;
        BigInteger[] v = Integers([ax, ay, bx, by, cx, cy]);
        return ((v[0] - v[4]) * (v[3] - v[5]) - (v[1] - v[5]) * (v[2] - v[4])).Sign;
    }

    /// <summary>What <see cref="Filter3D"/> returns when it cannot tell.</summary>
    internal const int Unknown = 2;

    /// <summary>
    /// +1 when d lies on the side of a, b, c from which they turn right (below it, when normals point up), -1 above, 0
    /// in the plane; <see cref="Unknown"/> where rounding hides it, which <see cref="Orient3DExact"/> then settles.
    /// </summary>
    internal static int Filter3D(Vector3D a, Vector3D b, Vector3D c, Vector3D d)
    {
        double ax = a.X - d.X,
            ay = a.Y - d.Y,
            az = a.Z - d.Z;
        double bx = b.X - d.X,
            by = b.Y - d.Y,
            bz = b.Z - d.Z;
        double cx = c.X - d.X,
            cy = c.Y - d.Y,
            cz = c.Z - d.Z;
        double bxcy = bx * cy,
            cxby = cx * by,
            cxay = cx * ay,
            axcy = ax * cy,
            axby = ax * by,
            bxay = bx * ay;
        double value = az * (bxcy - cxby) + bz * (cxay - axcy) + cz * (axby - bxay);
        double size =
            (Math.Abs(bxcy) + Math.Abs(cxby)) * Math.Abs(az)
            + (Math.Abs(cxay) + Math.Abs(axcy)) * Math.Abs(bz)
            + (Math.Abs(axby) + Math.Abs(bxay)) * Math.Abs(cz);
        if (size > Tiny && Math.Abs(value) > Bound3D * size)
            return value > 0 ? 1 : -1;
        if ((az == 0 && bz == 0 && cz == 0) || (ay == 0 && by == 0 && cy == 0) || (ax == 0 && bx == 0 && cx == 0))
            return 0;
        return Unknown;
    }

    internal static int Orient3DExact(Vector3D a, Vector3D b, Vector3D c, Vector3D d)
    {
        BigInteger[] v = Integers([a.X, a.Y, a.Z, b.X, b.Y, b.Z, c.X, c.Y, c.Z, d.X, d.Y, d.Z]);
        BigInteger ax = v[0] - v[9],
            ay = v[1] - v[10],
            az = v[2] - v[11];
        BigInteger bx = v[3] - v[9],
            by = v[4] - v[10],
            bz = v[5] - v[11];
        BigInteger cx = v[6] - v[9],
            cy = v[7] - v[10],
            cz = v[8] - v[11];
        return (az * (bx * cy - cx * by) + bz * (cx * ay - ax * cy) + cz * (ax * by - bx * ay)).Sign;
    }

    /// <summary>Integers in the ratio of the values: all scaled by one power of two.</summary>
    private static BigInteger[] Integers(ReadOnlySpan<double> values)
    {
        int least = int.MaxValue;
        foreach (double value in values)
            if (value != 0)
                least = Math.Min(least, Exponent(value));
        var integers = new BigInteger[values.Length];
        for (int i = 0; i < values.Length; i++)
            if (values[i] != 0)
                integers[i] = new BigInteger(Mantissa(values[i])) << (Exponent(values[i]) - least);
        return integers;
    }

    /// <summary>The exponent e of value = mantissa 2^e with a whole mantissa of 53 bits.</summary>
    internal static int Exponent(double value) =>
        Math.Max((int)(BitConverter.DoubleToInt64Bits(value) >> 52 & 0x7FF), 1) - 1075;

    internal static long Mantissa(double value)
    {
        long bits = BitConverter.DoubleToInt64Bits(value),
            mantissa = bits & 0xFFFFFFFFFFFFF;
        if ((bits >> 52 & 0x7FF) != 0)
            mantissa |= 1L << 52;
        return bits < 0 ? -mantissa : mantissa;
    }
}
