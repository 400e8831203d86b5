using System.Runtime.InteropServices;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// The pixels of one layer that lie on a flat underside, each with where that began. They are set row by row, from left
/// to right, and found in their row. Reusable; not safe to share between threads.
/// </summary>
internal sealed class FlatLayer(int height)
{
    private const int Removed = int.MinValue,
        Near = 4;

    private readonly int[] rowStarts = new int[height + 1];
    private readonly int[] latest = new int[height];
    private readonly List<int> columns = [];
    private readonly List<(int X, int Y, int Layer)> origins = [];

    // The first row that has no end yet, and so no pixel of its own.
    private int openRow;

    /// <summary>The number of pixels that have not been removed.</summary>
    internal int Count { get; private set; }

    internal void Clear()
    {
        columns.Clear();
        origins.Clear();
        (openRow, Count) = (0, 0);
    }

    /// <summary>Notes a pixel; none may lie before those already noted.</summary>
    internal void Append((int X, int Y) pixel, (int X, int Y, int Layer) origin)
    {
        for (; openRow <= pixel.Y; openRow++)
            rowStarts[openRow] = columns.Count;
        columns.Add(pixel.X);
        origins.Add(origin);
        Count++;
    }

    /// <summary>Where the underside in a pixel began; null when there is none.</summary>
    internal (int X, int Y, int Layer)? Find((int X, int Y) pixel) =>
        Count > 0 && Index(pixel) is var index and >= 0 && origins[index].Layer != Removed ? origins[index] : null;

    /// <summary>Whether a pixel of a row lies from one column to before another.</summary>
    internal bool Any(int row, int from, int to)
    {
        if (Count == 0 || (uint)row >= (uint)openRow)
            return false;
        int end = row + 1 < openRow ? rowStarts[row + 1] : columns.Count;
        ReadOnlySpan<int> known = CollectionsMarshal.AsSpan(columns)[..end];
        for (int i = rowStarts[row] + FirstFrom(known[rowStarts[row]..], from); i < known.Length && known[i] < to; i++)
            if (origins[i].Layer != Removed)
                return true;
        return false;
    }

    internal bool Remove((int X, int Y) pixel)
    {
        if (Count == 0 || Index(pixel) is not (var index and >= 0) || origins[index].Layer == Removed)
            return false;
        origins[index] = (0, 0, Removed);
        Count--;
        return true;
    }

    /// <summary>
    /// The index of a pixel, or -1. Who asks goes along the rows too: the search begins where the last one in the row
    /// has ended, and only over a longer way halves what is left.
    /// </summary>
    private int Index((int X, int Y) pixel)
    {
        if ((uint)pixel.Y >= (uint)openRow)
            return -1;
        ReadOnlySpan<int> known = CollectionsMarshal.AsSpan(columns);
        int start = rowStarts[pixel.Y],
            end = pixel.Y + 1 < openRow ? rowStarts[pixel.Y + 1] : known.Length,
            at = Math.Clamp(latest[pixel.Y], start, end);
        for (int step = 0; step < Near && at > start && known[at - 1] >= pixel.X; step++)
            at--;
        for (int step = 0; step < Near && at < end && known[at] < pixel.X; step++)
            at++;
        bool reached = (at == start || known[at - 1] < pixel.X) && (at == end || known[at] >= pixel.X);
        if (!reached)
            at = start + FirstFrom(known[start..end], pixel.X);
        latest[pixel.Y] = at;
        return at < end && known[at] == pixel.X ? at : -1;
    }

    /// <summary>How many of some ascending columns lie before one.</summary>
    private static int FirstFrom(ReadOnlySpan<int> ascending, int column)
    {
        int index = ascending.BinarySearch(column);
        return index < 0 ? ~index : index;
    }
}
