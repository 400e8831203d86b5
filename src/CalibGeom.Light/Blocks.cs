using System.Numerics;

namespace CalibGeom.Light;

/// <summary>A row of pixels in at most 64 equal blocks, a set of which is one word.</summary>
internal readonly struct Blocks(int width)
{
    private const int Least = 16;
    private readonly int size = Math.Max(Least, (width + 63) / 64);

    /// <summary>The blocks that pixels from start to before end lie in; at least one pixel.</summary>
    internal ulong Of(int start, int end)
    {
        int first = start / size,
            last = (end - 1) / size;
        return (ulong.MaxValue >> (63 - (last - first))) << first;
    }

    /// <summary>The whole blocks between start and end.</summary>
    internal ulong Within(int start, int end)
    {
        int first = (start + size - 1) / size,
            after = end / size;
        return first < after ? Of(first * size, after * size) : 0;
    }

    /// <summary>The pixels of a set, as ranges from left to right.</summary>
    internal RunList Runs(ulong set) => new(set, size, width);

    /// <summary>Ranges of pixels, to be enumerated without allocation.</summary>
    internal ref struct RunList(ulong set, int size, int width)
    {
        private ulong left = set;

        public (int Start, int End) Current { get; private set; }

        public readonly RunList GetEnumerator() => this;

        public bool MoveNext()
        {
            if (left == 0)
                return false;
            int first = BitOperations.TrailingZeroCount(left),
                after = first + BitOperations.TrailingZeroCount(~(left >> first));
            left = after >= 64 ? 0 : left & (ulong.MaxValue << after);
            Current = (first * size, Math.Min(width, after * size));
            return true;
        }
    }
}
