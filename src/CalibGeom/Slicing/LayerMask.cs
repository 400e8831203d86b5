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
    public bool this[int x, int y] =>
        (uint)y < (uint)Grid.Height
        && FirstEndingAfter(y, x) is var run
        && run < rowStarts[y + 1]
        && runs[run].Start <= x;

    internal int RunCount => runs.Length;

    /// <summary>The index of a row's first run among all runs.</summary>
    internal int FirstRun(int row) => rowStarts[row];

    /// <summary>Whether a pixel of a run, or a neighbour of one on any of eight sides, is lit here.</summary>
    internal bool Touches(int y, PixelRun run)
    {
        for (int row = Math.Max(0, y - 1); row <= Math.Min(Grid.Height - 1, y + 1); row++)
            if (
                FirstEndingAfter(row, run.Start - 1) is var near
                && near < rowStarts[row + 1]
                && runs[near].Start <= run.End
            )
                return true;
        return false;
    }

    /// <summary>
    /// The index of a row's first run that ends right of a column; the next row's first if none does.
    /// </summary>
    private int FirstEndingAfter(int row, int x)
    {
        int low = rowStarts[row],
            high = rowStarts[row + 1];
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (runs[middle].End <= x)
                low = middle + 1;
            else
                high = middle;
        }
        return low;
    }

    /// <summary>The runs, by index, that a condition keeps.</summary>
    internal LayerMask Where(Func<int, bool> keep)
    {
        var builder = new LayerMaskBuilder(Grid);
        for (int y = 0, run = 0; y < Grid.Height; y++)
        {
            for (; run < rowStarts[y + 1]; run++)
                if (keep(run))
                    builder.Add(runs[run].Start, runs[run].End);
            builder.EndRow();
        }
        return builder.ToMask();
    }

    /// <summary>
    /// Whether a pixel here lies further than a distance (mm, middle to middle) from all of another mask.
    /// </summary>
    internal bool AnyBeyond(LayerMask other, double distance)
    {
        for (int y = 0; y < Grid.Height; y++)
            foreach (PixelRun run in Row(y))
                if (IsBeyond(other, y, run, distance))
                    return true;
        return false;
    }

    /// <summary>Whether a pixel of a run lies further than a distance (mm) from all of another mask.</summary>
    internal static bool IsBeyond(LayerMask other, int y, PixelRun run, double distance) =>
        other.FirstBeyond(y, run, distance) < run.End;

    /// <summary>
    /// The first pixel of a run that lies further than a distance (mm) from all that is lit; the run's end when none
    /// does.
    /// </summary>
    internal int FirstBeyond(int y, PixelRun run, double distance)
    {
        int rows = (int)(distance / Grid.PitchY),
            x = run.Start;
        for (bool moved = true; moved && x < run.End; )
        {
            moved = false;
            for (int dy = -rows; dy <= rows; dy++)
            {
                int row = y + dy;
                if ((uint)row >= (uint)Grid.Height)
                    continue;
                double level = distance * distance - dy * dy * Grid.PitchY * Grid.PitchY;
                int aside = (int)(Math.Sqrt(Math.Max(0, level)) / Grid.PitchX);
                int reached = EndOfReach(row, x, aside);
                moved |= reached > x;
                x = Math.Max(x, reached);
            }
        }
        return Math.Min(x, run.End);
    }

    /// <summary> The first column from x on that lies more than some pixels aside of every run in a row. </summary>
    private int EndOfReach(int row, int x, int aside)
    {
        for (
            int run = FirstEndingAfter(row, x - aside);
            run < rowStarts[row + 1] && runs[run].Start - aside <= x;
            run++
        )
            x = Math.Max(x, runs[run].End + aside);
        return x;
    }

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
        return builder.ToMask();
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
        return builder.ToMask();
    }
}
