namespace CalibGeom.Inspection;

/// <summary>Collects runs row by row.</summary>
internal sealed class LayerMaskBuilder(PixelGrid grid)
{
    private readonly int[] rowStarts = new int[grid.Height + 1];
    private readonly List<PixelRun> runs = [];
    private int row;

    /// <summary>Adds pixels to the right of those already in the row; nothing when the run is empty.</summary>
    internal void Add(int start, int end)
    {
        if (end <= start) return;
        if (runs.Count > rowStarts[row] && runs[^1].End == start) runs[^1] = new PixelRun(runs[^1].Start, end);
        else runs.Add(new PixelRun(start, end));
    }

    internal void EndRow() => rowStarts[++row] = runs.Count;

    internal LayerMask Build() => new(grid, rowStarts, runs.ToArray());
}
