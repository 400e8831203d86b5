using CalibGeom.Formats.Stl;

namespace CalibGeom.Plates;

/// <summary>
/// Whether every directed edge of a stream of facets has its opposite, in constant memory: each edge adds a 64-bit
/// number made of its ends and its opposite takes the same number away. A surface with open or flipped edges passes
/// with a chance of 2^-64.
/// </summary>
internal struct EdgeTally
{
    private ulong sum;

    internal readonly bool IsClosed => sum == 0;

    internal void Add(ref readonly StlFacet f)
    {
        ulong a = Corner(f.AX, f.AY, f.AZ),
            b = Corner(f.BX, f.BY, f.BZ),
            c = Corner(f.CX, f.CY, f.CZ);
        sum += Edge(a, b) + Edge(b, c) + Edge(c, a);
    }

    internal void Add(EdgeTally other) => sum += other.sum;

    private static ulong Edge(ulong from, ulong to) => Mix(from + 3 * to) - Mix(to + 3 * from);

    private static ulong Corner(float x, float y, float z) =>
        Mix((Bits(x) | ((ulong)Bits(y) << 32)) * 0x9E3779B97F4A7C15 + Bits(z));

    private static uint Bits(float value) => BitConverter.SingleToUInt32Bits(value + 0f);

    private static ulong Mix(ulong value)
    {
        value = (value ^ (value >> 32)) * 0xD6E8FEB86659FD93;
        return value ^ (value >> 29);
    }
}
