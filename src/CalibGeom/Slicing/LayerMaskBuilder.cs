using System.Buffers;

namespace CalibGeom.Slicing;

/// <summary>Collects the lit pixels of a layer, row by row from the front. Not safe to share between threads.</summary>
/// <param name="grid">The field of pixels.</param>
public sealed class LayerMaskBuilder(PixelGrid grid)
{
    private readonly PixelGrid grid = grid ?? throw new ArgumentNullException(nameof(grid));
    private readonly int[] rowStarts = new int[grid.Height + 1];

    // Borrowed until the layer is built: thousands of layers follow each other.
    private PixelRun[] runs = ArrayPool<PixelRun>.Shared.Rent(1024);
    private LayerMask? built;
    private int count;
    private int row;

    /// <summary>Adds pixels to the right of those already in the row; nothing when the run is empty.</summary>
    /// <param name="start">The first pixel.</param>
    /// <param name="end">The pixel after the last.</param>
    public void Add(int start, int end)
    {
        if (end <= start)
            return;
        if (count > rowStarts[row] && runs[count - 1].End == start)
        {
            runs[count - 1] = new PixelRun(runs[count - 1].Start, end);
            return;
        }
        if (count == runs.Length)
            Grow();
        runs[count++] = new PixelRun(start, end);
    }

    /// <summary>Goes on to the next row.</summary>
    public void EndRow() => rowStarts[++row] = count;

    /// <summary>The layer, once every row has ended; the same one when it is asked for again.</summary>
    public LayerMask ToMask()
    {
        if (built is not null)
            return built;
        built = new LayerMask(grid, rowStarts, runs.AsSpan(0, count).ToArray());
        ArrayPool<PixelRun>.Shared.Return(runs);
        runs = [];
        return built;
    }

    private void Grow()
    {
        PixelRun[] grown = ArrayPool<PixelRun>.Shared.Rent(Math.Max(1024, 2 * count));
        runs.AsSpan(0, count).CopyTo(grown);
        ArrayPool<PixelRun>.Shared.Return(runs);
        runs = grown;
    }
}
