using System.Numerics;

namespace CalibGeom.Meshes;

/// <summary>
/// Gives equal positions equal indices, in order of first appearance. Equal means the same three numbers (-0 is 0): there is no threshold,
/// so nothing moves and the result does not depend on order.
/// </summary>
internal sealed class VertexWelder
{
    private double[] coordinates;
    private int[] slots;
    private int shift;
    private int count;

    internal VertexWelder(int expected)
    {
        coordinates = new double[3 * Math.Max(expected, 16)];
        slots = [];
        Resize(BitOperations.Log2(BitOperations.RoundUpToPowerOf2((uint)Math.Max(2L * expected, 32))));
    }

    internal int Count => count;

    internal int Add(double x, double y, double z)
    {
        x += 0.0;
        y += 0.0;
        z += 0.0;
        int[] table = slots;
        double[] known = coordinates;
        uint mask = (uint)table.Length - 1;
        uint slot = (uint)(Hash(x, y, z) >> shift);
        int found;
        while ((found = table[slot] - 1) >= 0)
        {
            int i = 3 * found;
            if (known[i] == x && known[i + 1] == y && known[i + 2] == z) return found;
            slot = (slot + 1) & mask;
        }
        return Insert(slot, x, y, z);
    }

    /// <summary>The positions so far; the welder must not be used afterwards.</summary>
    internal double[] TakeCoordinates()
    {
        slots = [];
        if (coordinates.Length != 3 * count) Array.Resize(ref coordinates, 3 * count);
        return coordinates;
    }

    private int Insert(uint slot, double x, double y, double z)
    {
        if (3 * count == coordinates.Length) Array.Resize(ref coordinates, 3 * (int)Math.Min(count * 3L / 2, Array.MaxLength / 3));
        coordinates[3 * count] = x;
        coordinates[3 * count + 1] = y;
        coordinates[3 * count + 2] = z;
        slots[slot] = ++count;
        if (2L * count > slots.Length) Resize(65 - shift);
        return count - 1;
    }

    private void Resize(int bits)
    {
        slots = new int[1 << bits];
        shift = 64 - bits;
        uint mask = (uint)slots.Length - 1;
        for (int v = 0; v < count; v++)
        {
            uint slot = (uint)(Hash(coordinates[3 * v], coordinates[3 * v + 1], coordinates[3 * v + 2]) >> shift);
            while (slots[slot] != 0) slot = (slot + 1) & mask;
            slots[slot] = v + 1;
        }
    }

    // The odd factors carry every bit into the high ones, which choose the slot: grid values differ in few and high bits of the mantissa.
    private static ulong Hash(double x, double y, double z)
    {
        ulong h = (ulong)BitConverter.DoubleToInt64Bits(x) * 0x9E3779B97F4A7C15;
        h = (BitOperations.RotateLeft(h, 31) ^ (ulong)BitConverter.DoubleToInt64Bits(y)) * 0xC2B2AE3D27D4EB4F;
        h = (BitOperations.RotateLeft(h, 31) ^ (ulong)BitConverter.DoubleToInt64Bits(z)) * 0x165667B19E3779F9;
        h ^= h >> 32;
        return h * 0x9E3779B97F4A7C15;
    }
}
