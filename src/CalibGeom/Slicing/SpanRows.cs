namespace CalibGeom.Slicing;

/// <summary>What can be told of rows of spans, whoever holds them.</summary>
/// <param name="grid">The field of pixels.</param>
/// <param name="starts">Where each row begins, and where the last one ends.</param>
/// <param name="spans">The spans of all rows.</param>
internal readonly ref struct SpanRows(PixelGrid grid, ReadOnlySpan<int> starts, ReadOnlySpan<CoverageSpan> spans)
{
    /// <summary>What is covered by this part or more counts as lit.</summary>
    internal const float Half = 0.5f - 1e-6f;

    private readonly ReadOnlySpan<int> starts = starts;
    private readonly ReadOnlySpan<CoverageSpan> spans = spans;

    /// <summary>The covered area, mm2.</summary>
    internal double Area
    {
        get
        {
            double sum = 0;
            foreach (CoverageSpan span in spans)
                sum += (span.End - span.Start) * (double)span.Coverage;
            return sum * grid.PixelArea;
        }
    }

    /// <summary>The pixels covered by half or more.</summary>
    internal LayerMask ToMask()
    {
        var builder = new LayerMaskBuilder(grid);
        for (int y = 0; y < grid.Height; y++)
        {
            foreach (CoverageSpan span in spans[starts[y]..starts[y + 1]])
                if (span.Coverage >= Half)
                    builder.Add(span.Start, span.End);
            builder.EndRow();
        }
        return builder.ToMask();
    }
}
