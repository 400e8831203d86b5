namespace CalibGeom.Slicing;

/// <summary>Collects the lit pixels of a layer, row by row from the front. Not safe to share between threads.</summary>
/// <param name="grid">The field of pixels.</param>
public sealed class LayerMaskBuilder(PixelGrid grid)
{
    private readonly int[] rowStarts = new int[grid.Height + 1];
    private readonly List<PixelRun> runs = [];
    private int row;

    /// <summary>Adds pixels to the right of those already in the row; nothing when the run is empty.</summary>
    /// <param name="start">The first pixel.</param>
    /// <param name="end">The pixel after the last.</param>
    public void Add(int start, int end)
    {
        if (end <= start)
            return;
        if (runs.Count > rowStarts[row] && runs[^1].End == start)
            runs[^1] = new PixelRun(runs[^1].Start, end);
        else
            runs.Add(new PixelRun(start, end));
    }

    /// <summary>Goes on to the next row.</summary>
    public void EndRow() => rowStarts[++row] = runs.Count;

    /// <summary>The layer, once every row has ended.</summary>
    public LayerMask Build() => new(grid, rowStarts, runs.ToArray());
}
