using CalibGeom.Slicing;

namespace CalibGeom.Light;

/// <summary>The blurred value of any mask at one place.</summary>
internal sealed class BlurredPoint
{
    private readonly PixelGrid grid;
    private readonly (double Weight, PixelTaps X, PixelTaps Y)[] parts;

    internal BlurredPoint(PixelGrid grid, EdgeBlur blur, double x, double y)
    {
        this.grid = grid;
        parts =
        [
            .. blur.Components.Select(c =>
                (
                    c.Weight,
                    new PixelTaps(x - grid.Origin.X, grid.PitchX, c.Sigma),
                    new PixelTaps(y - grid.Origin.Y, grid.PitchY, c.Sigma)
                )
            ),
        ];
    }

    /// <summary>The share of the full light.</summary>
    internal double Share(CoverageRaster mask)
    {
        double share = 0;
        foreach ((double weight, PixelTaps x, PixelTaps y) in parts)
            for (int row = Math.Max(0, y.First); row < Math.Min(grid.Height, y.End); row++)
                share += weight * y.Between(row, row + 1) * Along(mask.Row(row), x);
        return share;
    }

    private static double Along(ReadOnlySpan<CoverageSpan> row, PixelTaps taps)
    {
        double sum = 0;
        for (int i = FirstEndingAfter(row, taps.First); i < row.Length && row[i].Start < taps.End; i++)
            sum += row[i].Coverage * taps.Between(row[i].Start, row[i].End);
        return sum;
    }

    private static int FirstEndingAfter(ReadOnlySpan<CoverageSpan> row, int pixel)
    {
        int low = 0,
            high = row.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (row[middle].End <= pixel)
                low = middle + 1;
            else
                high = middle;
        }
        return low;
    }
}
