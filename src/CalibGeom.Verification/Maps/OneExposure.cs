namespace CalibGeom.Verification.Maps;

/// <summary>One exposure for the whole plate, or for the part of it that can be kept within limits.</summary>
internal static class OneExposure
{
    private const int Cells = 31;

    /// <summary>
    /// ln of the new exposure over the present, the share of the plate within the limits at it, and the largest
    /// rectangle that is.
    /// </summary>
    internal static (double Change, double Share, PlatePart? Part) For(
        Surface surface,
        double[] mean,
        MapOptions options
    )
    {
        double reach = Math.Min(
            -Math.Log(1 - options.LightTolerance),
            options.Tolerance / (2 * options.LightEffect.Median)
        );
        double[] light = Grid(options, Cells).Select(p => surface.At(p.X, p.Y, mean)).ToArray();
        double[] sorted = light.Order().ToArray();
        // The window of width 2 reach that holds most places; its middle is put on what was calibrated.
        int best = 0,
            from = 0,
            to = 0,
            high = 0;
        for (int low = 0; low < sorted.Length; low++)
        {
            while (high < sorted.Length && sorted[high] <= sorted[low] + 2 * reach + 1e-12)
                high++;
            if (high - low > best)
                (best, from, to) = (high - low, low, high - 1);
        }
        double middle = (sorted[from] + sorted[to]) / 2;
        bool[,] within = new bool[Cells, Cells];
        for (int i = 0; i < light.Length; i++)
            within[i / Cells, i % Cells] = Math.Abs(light[i] - middle) <= reach + 1e-9;
        return (-middle, (double)best / light.Length, Largest(within, options));
    }

    internal static IEnumerable<(double X, double Y)> Grid(MapOptions options, int cells) =>
        from row in Enumerable.Range(0, cells)
        from column in Enumerable.Range(0, cells)
        select (options.Width * (column / (cells - 1.0) - 0.5), options.Depth * (row / (cells - 1.0) - 0.5));

    private static PlatePart? Largest(bool[,] within, MapOptions options)
    {
        PlatePart? best = null;
        double most = 0;
        for (int bottom = 0; bottom < Cells; bottom++)
        {
            var free = Enumerable.Repeat(true, Cells).ToArray();
            for (int top = bottom; top < Cells; top++)
            {
                int start = -1;
                for (int c = 0; c <= Cells; c++)
                {
                    bool open = c < Cells && (free[c] &= within[top, c]);
                    if (open && start < 0)
                        start = c;
                    if (open || start < 0)
                        continue;
                    double area = (c - 1 - start) * (top - bottom);
                    if (area > most)
                        (most, best) = (area, Part(start, c - 1, bottom, top, options));
                    start = -1;
                }
            }
        }
        return best;
    }

    private static PlatePart Part(int left, int right, int bottom, int top, MapOptions options)
    {
        double X(int c) => options.Width * (c / (Cells - 1.0) - 0.5);
        double Y(int r) => options.Depth * (r / (Cells - 1.0) - 0.5);
        return new PlatePart(X(left), X(right), Y(bottom), Y(top));
    }
}
