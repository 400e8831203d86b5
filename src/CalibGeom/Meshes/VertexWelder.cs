using System.Numerics;

namespace CalibGeom.Meshes;

/// <summary>
/// Gives equal positions equal indices, in order of first appearance. Equal means the same three numbers (-0 is 0): there is no threshold,
/// so nothing moves and the result does not depend on order. Positions are kept in pages, so that growing copies and wastes nothing, and in
/// the type they came in, which for 32-bit floats halves the memory.
/// </summary>
internal sealed class VertexWelder<T>
    where T : unmanaged, IBinaryFloatingPointIeee754<T>
{
    private const int PageBits = 16;
    private const int PageMask = (1 << PageBits) - 1;

    private readonly List<T[]> pages = [];
    private int[] slots = [];
    private int shift;
    private int count;

    internal VertexWelder(int expected)
    {
        Resize(BitOperations.Log2(BitOperations.RoundUpToPowerOf2((uint)Math.Clamp(expected * 4L / 3, 32, 1 << 30))));
    }

    internal int Count => count;

    internal int Add(T x, T y, T z)
    {
        x += T.Zero;
        y += T.Zero;
        z += T.Zero;
        int[] table = slots;
        uint mask = (uint)table.Length - 1;
        uint slot = (uint)(Hash(x, y, z) >> shift);
        int found;
        while ((found = table[slot] - 1) >= 0)
        {
            T[] page = pages[found >> PageBits];
            int i = 3 * (found & PageMask);
            if (page[i] == x && page[i + 1] == y && page[i + 2] == z) return found;
            slot = (slot + 1) & mask;
        }
        return Insert(slot, x, y, z);
    }

    /// <summary>The positions so far; the welder must not be used afterwards.</summary>
    internal double[] TakeCoordinates()
    {
        slots = [];
        double[] all = GC.AllocateUninitializedArray<double>(3 * count);
        for (int p = 0, at = 0; at < all.Length; p++)
        {
            foreach (T value in pages[p].AsSpan(0, Math.Min(pages[p].Length, all.Length - at))) all[at++] = double.CreateTruncating(value);
            pages[p] = [];
        }
        return all;
    }

    private int Insert(uint slot, T x, T y, T z)
    {
        if (count == Array.MaxLength / 3) throw new InputException($"The mesh has more than {count} vertices, the most that fit. Split it.");
        int i = 3 * (count & PageMask);
        T[] page = Page(count >> PageBits, i);
        page[i] = x;
        page[i + 1] = y;
        page[i + 2] = z;
        slots[slot] = ++count;
        if (4L * count > 3L * slots.Length) Resize(65 - shift);
        return count - 1;
    }

    // A page begins small, for small meshes; all but the last are full.
    private T[] Page(int index, int at)
    {
        if (index == pages.Count) pages.Add(new T[index == 0 ? 3 * 64 : 3 << PageBits]);
        T[] page = pages[index];
        if (at < page.Length) return page;
        Array.Resize(ref page, 2 * page.Length);
        return pages[index] = page;
    }

    private void Resize(int bits)
    {
        slots = [];
        slots = new int[1 << bits];
        shift = 64 - bits;
        uint mask = (uint)slots.Length - 1;
        for (int v = 0; v < count; v++)
        {
            T[] page = pages[v >> PageBits];
            int i = 3 * (v & PageMask);
            uint slot = (uint)(Hash(page[i], page[i + 1], page[i + 2]) >> shift);
            while (slots[slot] != 0) slot = (slot + 1) & mask;
            slots[slot] = v + 1;
        }
    }

    // The odd factors carry every bit into the high ones, which choose the slot: grid values differ in few and high bits of the mantissa.
    private static ulong Hash(T x, T y, T z)
    {
        ulong h = Bits(x) * 0x9E3779B97F4A7C15;
        h = (BitOperations.RotateLeft(h, 31) ^ Bits(y)) * 0xC2B2AE3D27D4EB4F;
        h = (BitOperations.RotateLeft(h, 31) ^ Bits(z)) * 0x165667B19E3779F9;
        h ^= h >> 32;
        return h * 0x9E3779B97F4A7C15;
    }

    private static ulong Bits(T value) => (ulong)BitConverter.DoubleToInt64Bits(double.CreateTruncating(value));
}
