namespace CalibGeom.Slicing;

/// <summary>
/// How much of each pixel a layer covers, as runs of equal coverage. Where no shells overlap it is the exact area. A
/// place counts as covered when its winding number is positive, so overlapping shells do not cancel; layers in which
/// shells overlap are computed in at least eight bands a pixel. Immutable and safe to share between threads.
/// </summary>
public sealed class CoverageRaster
{
    private readonly int[] rowStarts;
    private readonly CoverageSpan[] spans;

    internal CoverageRaster(PixelGrid grid, int[] rowStarts, CoverageSpan[] spans, bool overlaps)
    {
        Grid = grid;
        this.rowStarts = rowStarts;
        this.spans = spans;
        Overlaps = overlaps;
    }

    /// <summary>The coverage of a layer; what lies outside the grid is left out.</summary>
    /// <param name="layer">The contours.</param>
    /// <param name="grid">The pixels.</param>
    public static CoverageRaster Of(LayerContours layer, PixelGrid grid)
    {
        ArgumentNullException.ThrowIfNull(layer);
        ArgumentNullException.ThrowIfNull(grid);
        return new CoverageRasterizer(grid).Draw(layer);
    }

    /// <summary>The field of pixels.</summary>
    public PixelGrid Grid { get; }

    /// <summary>Whether the layer has places that are covered more than once, or turned inside out.</summary>
    public bool Overlaps { get; }

    /// <summary>The covered area, mm2.</summary>
    public double Area => new SpanRows(Grid, rowStarts, spans).Area;

    /// <summary>The covered pixels of a row, from left to right.</summary>
    /// <param name="row">0 to the grid's height - 1.</param>
    /// <exception cref="IndexOutOfRangeException">No such row.</exception>
    public ReadOnlySpan<CoverageSpan> Row(int row) => spans.AsSpan(rowStarts[row], rowStarts[row + 1] - rowStarts[row]);

    /// <summary>The pixels covered by half or more.</summary>
    public LayerMask ToMask() => new SpanRows(Grid, rowStarts, spans).ToMask();

    /// <summary>The pixels covered by half or more as fully covered ones, all others as empty.</summary>
    public CoverageRaster Threshold()
    {
        var kept = new List<CoverageSpan>();
        var starts = new int[Grid.Height + 1];
        for (int y = 0; y < Grid.Height; y++)
        {
            foreach (CoverageSpan span in Row(y))
                if (span.Coverage < SpanRows.Half)
                    continue;
                else if (kept.Count > starts[y] && kept[^1].End == span.Start)
                    kept[^1] = kept[^1] with { End = span.End };
                else
                    kept.Add(new CoverageSpan(span.Start, span.End, 1));
            starts[y + 1] = kept.Count;
        }
        return new CoverageRaster(Grid, starts, kept.ToArray(), false);
    }

    /// <summary>Writes the coverage of every pixel, row by row.</summary>
    /// <param name="pixels">At least width times height values; all are set.</param>
    /// <exception cref="ArgumentException">There is not enough room.</exception>
    public void CopyTo(Span<float> pixels)
    {
        int count = Grid.Width * Grid.Height;
        if (pixels.Length < count)
            throw new ArgumentException(
                $"The raster needs room for {count} values; there is room for {pixels.Length}.",
                nameof(pixels)
            );
        pixels[..count].Clear();
        for (int y = 0; y < Grid.Height; y++)
            foreach (CoverageSpan span in Row(y))
                pixels.Slice(y * Grid.Width + span.Start, span.End - span.Start).Fill(span.Coverage);
    }

    /// <summary>Writes the coverage of every pixel as grey levels 0 to 255, row by row.</summary>
    /// <param name="pixels">At least width times height values; all are set.</param>
    /// <exception cref="ArgumentException">There is not enough room.</exception>
    public void CopyTo(Span<byte> pixels)
    {
        int count = Grid.Width * Grid.Height;
        if (pixels.Length < count)
            throw new ArgumentException(
                $"The raster needs room for {count} values; there is room for {pixels.Length}.",
                nameof(pixels)
            );
        pixels[..count].Clear();
        for (int y = 0; y < Grid.Height; y++)
            foreach (CoverageSpan span in Row(y))
                pixels
                    .Slice(y * Grid.Width + span.Start, span.End - span.Start)
                    .Fill((byte)MathF.Round(span.Coverage * 255));
    }
}
