namespace CalibGeom.Slicing;

/// <summary>The lit pixels of a layer, as runs. Immutable and safe to share between threads.</summary>
public sealed class LayerMask
{
    private readonly int[] rowStarts;
    private readonly PixelRun[] runs;

    internal LayerMask(PixelGrid grid, int[] rowStarts, PixelRun[] runs)
    {
        Grid = grid;
        this.rowStarts = rowStarts;
        this.runs = runs;
        foreach (PixelRun run in runs)
            PixelCount += run.Length;
    }

    /// <summary>The field of pixels.</summary>
    public PixelGrid Grid { get; }

    /// <summary>The number of lit pixels.</summary>
    public long PixelCount { get; }

    /// <summary>
    /// The lit runs of one row, from left to right; between two of them lies at least one dark pixel.
    /// </summary>
    /// <param name="row">0 to the grid's height - 1.</param>
    /// <exception cref="IndexOutOfRangeException">No such row.</exception>
    public ReadOnlySpan<PixelRun> Row(int row) => runs.AsSpan(rowStarts[row], rowStarts[row + 1] - rowStarts[row]);

    /// <summary>Whether a pixel is lit; pixels outside the grid are not.</summary>
    /// <param name="x">Column.</param>
    /// <param name="y">Row.</param>
    public bool this[int x, int y]
    {
        get
        {
            if ((uint)y >= (uint)Grid.Height)
                return false;
            int low = rowStarts[y],
                high = rowStarts[y + 1];
            while (low < high)
            {
                int middle = (low + high) / 2;
                if (runs[middle].End <= x)
                    low = middle + 1;
                else
                    high = middle;
            }
            return low < rowStarts[y + 1] && runs[low].Start <= x;
        }
    }

    internal int RunCount => runs.Length;

    /// <summary>The index of a row's first run among all runs.</summary>
    internal int FirstRun(int row) => rowStarts[row];

    internal static LayerMask Empty(PixelGrid grid) => new(grid, new int[grid.Height + 1], []);

    /// <summary>The pixels lit here and not in another mask of the same grid.</summary>
    internal LayerMask Except(LayerMask other)
    {
        var builder = new LayerMaskBuilder(Grid);
        for (int y = 0; y < Grid.Height; y++)
        {
            ReadOnlySpan<PixelRun> taken = other.Row(y);
            int next = 0;
            foreach (PixelRun run in Row(y))
            {
                int from = run.Start;
                while (next < taken.Length && taken[next].End <= from)
                    next++;
                for (int i = next; i < taken.Length && taken[i].Start < run.End; i++)
                {
                    builder.Add(from, taken[i].Start);
                    from = taken[i].End;
                }
                builder.Add(from, run.End);
            }
            builder.EndRow();
        }
        return builder.Build();
    }

    /// <summary>The pixels of the grid that are not lit.</summary>
    internal LayerMask Complement()
    {
        var builder = new LayerMaskBuilder(Grid);
        for (int y = 0; y < Grid.Height; y++)
        {
            int from = 0;
            foreach (PixelRun run in Row(y))
            {
                builder.Add(from, run.Start);
                from = run.End;
            }
            builder.Add(from, Grid.Width);
            builder.EndRow();
        }
        return builder.Build();
    }
}
