using System.Numerics;

namespace CalibGeom.Meshes;

/// <summary>
/// Gives equal positions equal indices, in order of first appearance. Equal means the same three numbers (-0 is 0):
/// there is no threshold, so nothing moves and the result does not depend on order. Positions go straight into the
/// array that the mesh will keep; it grows once at most as long as the caller's bound holds, and what is never touched
/// of it costs no memory.
/// </summary>
internal sealed class VertexWelder
{
    private double[] positions;
    private int[] slots = [];
    private int shift;
    private int count;

    /// <param name="expected">The likely number of distinct positions.</param>
    internal VertexWelder(int expected)
    {
        expected = Math.Clamp(expected, 16, Array.MaxLength / 3);
        positions = GC.AllocateUninitializedArray<double>(3 * expected);
        Resize(BitOperations.Log2(BitOperations.RoundUpToPowerOf2((uint)Math.Clamp(expected * 4L / 3, 32, 1 << 30))));
    }

    /// <summary>
    /// The most distinct positions that there will be, when that is known; otherwise room doubles whenever it runs out.
    /// </summary>
    internal long Bound { get; set; }

    internal int Count => count;

    internal int Add(double x, double y, double z)
    {
        x += 0.0;
        y += 0.0;
        z += 0.0;
        int[] table = slots;
        double[] known = positions;
        uint mask = (uint)table.Length - 1;
        uint slot = (uint)(Hash(x, y, z) >> shift);
        int found;
        while ((found = table[slot] - 1) >= 0)
        {
            int i = 3 * found;
            if (known[i] == x && known[i + 1] == y && known[i + 2] == z)
                return found;
            slot = (slot + 1) & mask;
        }
        return Insert(slot, x, y, z);
    }

    /// <summary>A mesh of the positions so far; the welder must not be used afterwards.</summary>
    internal TriangleMesh ToMesh(int[] triangles)
    {
        slots = [];
        // A copy of few positions costs less than the room they leave; a copy of many would be the peak.
        if (positions.Length > 6L * count)
            Array.Resize(ref positions, 3 * count);
        return TriangleMesh.Adopt(positions, count, triangles);
    }

    private int Insert(uint slot, double x, double y, double z)
    {
        int i = 3 * count;
        if (i + 3 > positions.Length)
            Grow();
        positions[i] = x;
        positions[i + 1] = y;
        positions[i + 2] = z;
        slots[slot] = ++count;
        // By four at a time: tables that were left behind are memory too.
        if (4L * count > 3L * slots.Length)
            Resize(Math.Min(66 - shift, 30));
        return count - 1;
    }

    private void Grow()
    {
        int most = Array.MaxLength / 3;
        if (count == most)
            throw new InputException(
                InputIds.Mesh,
                $"The mesh has more than {count} vertices, the most that fit. Split it."
            );
        double[] grown = GC.AllocateUninitializedArray<double>(
            3 * (int)Math.Min(Bound > count ? Bound : 2L * count, most)
        );
        positions.AsSpan(0, 3 * count).CopyTo(grown);
        positions = grown;
    }

    private void Resize(int bits)
    {
        slots = [];
        slots = new int[1 << bits];
        shift = 64 - bits;
        uint mask = (uint)slots.Length - 1;
        for (int v = 0; v < count; v++)
        {
            uint slot = (uint)(Hash(positions[3 * v], positions[3 * v + 1], positions[3 * v + 2]) >> shift);
            while (slots[slot] != 0)
                slot = (slot + 1) & mask;
            slots[slot] = v + 1;
        }
    }

    // The odd factors carry every bit into the high ones, which choose the slot: grid values differ in few and high
    // bits of the mantissa.
    private static ulong Hash(double x, double y, double z)
    {
        ulong h = Bits(x) * 0x9E3779B97F4A7C15;
        h = (BitOperations.RotateLeft(h, 31) ^ Bits(y)) * 0xC2B2AE3D27D4EB4F;
        h = (BitOperations.RotateLeft(h, 31) ^ Bits(z)) * 0x165667B19E3779F9;
        h ^= h >> 32;
        return h * 0x9E3779B97F4A7C15;
    }

    private static ulong Bits(double value) => (ulong)BitConverter.DoubleToInt64Bits(value);
}
