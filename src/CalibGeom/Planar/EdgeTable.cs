using System.Numerics;

namespace CalibGeom.Planar;

/// <summary>
/// Numbers pairs of indices 0, 1, ... in the order in which they are added: open addressing on both indices packed in
/// 64 bits.
/// </summary>
internal sealed class EdgeTable
{
    private ulong[] keys;
    private int[] slots;
    private int shift;

    internal EdgeTable(int expected)
    {
        keys = new ulong[Math.Max(expected, 16)];
        int bits = BitOperations.Log2(BitOperations.RoundUpToPowerOf2((uint)Math.Max(2 * expected, 32)));
        (slots, shift) = (new int[1 << bits], 64 - bits);
    }

    /// <summary>The number of pairs.</summary>
    internal int Count { get; private set; }

    /// <summary>The pair with a number.</summary>
    internal (int From, int To) this[int number] => ((int)(keys[number] >> 32), (int)(uint)keys[number]);

    /// <summary>The number of a pair, or -1.</summary>
    internal int Find(int from, int to)
    {
        ulong key = Key(from, to);
        int mask = slots.Length - 1;
        for (int slot = Slot(key); slots[slot] > 0; slot = (slot + 1) & mask)
            if (keys[slots[slot] - 1] == key)
                return slots[slot] - 1;
        return -1;
    }

    /// <summary>The number of a pair, which is added when it is new.</summary>
    internal int Add(int from, int to)
    {
        ulong key = Key(from, to);
        int mask = slots.Length - 1,
            slot = Slot(key);
        for (; slots[slot] > 0; slot = (slot + 1) & mask)
            if (keys[slots[slot] - 1] == key)
                return slots[slot] - 1;
        if (Count == keys.Length)
            Array.Resize(ref keys, 2 * Count);
        keys[Count] = key;
        slots[slot] = ++Count;
        if (2 * Count > slots.Length)
            Grow();
        return Count - 1;
    }

    /// <summary>Forgets all pairs and keeps the room.</summary>
    internal void Clear()
    {
        if (Count > 0)
            Array.Clear(slots);
        Count = 0;
    }

    private void Grow()
    {
        (slots, shift) = (new int[2 * slots.Length], shift - 1);
        for (int i = 0; i < Count; i++)
        {
            int slot = Slot(keys[i]);
            while (slots[slot] > 0)
                slot = (slot + 1) & (slots.Length - 1);
            slots[slot] = i + 1;
        }
    }

    private static ulong Key(int from, int to) => (ulong)(uint)from << 32 | (uint)to;

    private int Slot(ulong key)
    {
        key ^= key >> 29;
        return (int)(key * 0x9E3779B97F4A7C15 >> shift);
    }
}
