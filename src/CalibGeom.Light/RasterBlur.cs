using System.Numerics;
using CalibGeom.Slicing;

namespace CalibGeom.Light;

/// <summary>
/// Blurs a mask by a Gaussian, along the rows from its runs, then across them, and adds it to a raster; only blocks of
/// pixels that light reaches are touched. Reusable; not safe to share between threads.
/// </summary>
internal sealed class RasterBlur
{
    private readonly int width,
        height,
        radius;
    private readonly Blocks blocks;
    private readonly float[] before,
        across;
    private readonly float[][] rows,
        window;
    private readonly ulong[] reached,
        full;

    internal RasterBlur(PixelGrid grid, double sigma)
    {
        (width, height) = (grid.Width, grid.Height);
        blocks = new Blocks(width);
        before = SumsBefore(new PixelTaps(0.5 * grid.PitchX, grid.PitchX, sigma));
        var y = new PixelTaps(0.5 * grid.PitchY, grid.PitchY, sigma);
        radius = y.End - 1;
        across = [.. Enumerable.Range(0, radius + 1).Select(i => (float)y.Between(i, i + 1))];
        rows = [.. Enumerable.Range(0, 2 * radius + 1).Select(_ => new float[width])];
        window = new float[rows.Length][];
        reached = new ulong[rows.Length];
        full = new ulong[rows.Length];
    }

    /// <summary>raster = raster * keep + dose * blurred mask.</summary>
    /// <param name="raster">Row by row.</param>
    /// <param name="lit">The blocks of each row that are not zero; those reached are added.</param>
    /// <param name="mask">The mask.</param>
    /// <param name="dose">The dose of a fully lit wide area.</param>
    /// <param name="keep">What remains of the raster.</param>
    internal void AddTo(Span<float> raster, ulong[] lit, CoverageRaster mask, float dose, float keep)
    {
        for (int y = 0; y < height + radius; y++)
        {
            Fill(y % rows.Length, y < height ? mask.Row(y) : default);
            if (y >= radius)
                Combine(y - radius, raster.Slice((y - radius) * width, width), ref lit[y - radius], dose, keep);
        }
        for (int i = 0; i < rows.Length; i++)
            Fill(i, default);
    }

    /// <summary>Blurs the runs of one row along it.</summary>
    private void Fill(int slot, ReadOnlySpan<CoverageSpan> runs)
    {
        float[] row = rows[slot];
        foreach ((int start, int end) in blocks.Runs(reached[slot]))
            Array.Clear(row, start, end - start);
        reached[slot] = full[slot] = 0;
        int reach = before.Length / 2;
        foreach (CoverageSpan run in runs)
        {
            int from = Math.Max(0, run.Start - reach),
                to = Math.Min(width, run.End + reach);
            if (from >= to)
                continue;
            reached[slot] |= blocks.Of(from, to);
            int flatFrom = Math.Clamp(run.Start + reach, from, to),
                flatTo = Math.Clamp(run.End - reach, flatFrom, to);
            for (int x = from; x < flatFrom; x++)
                row[x] += run.Coverage * Weight(run, x);
            if (run.Coverage == 1)
            {
                row.AsSpan(flatFrom, flatTo - flatFrom).Fill(1);
                full[slot] |= blocks.Within(flatFrom, flatTo);
            }
            else
                for (int x = flatFrom; x < flatTo; x++)
                    row[x] += run.Coverage;
            for (int x = flatTo; x < to; x++)
                row[x] += run.Coverage * Weight(run, x);
        }
    }

    private float Weight(CoverageSpan run, int x)
    {
        int middle = before.Length / 2,
            last = before.Length - 1;
        return before[Math.Clamp(run.End - x + middle, 0, last)] - before[Math.Clamp(run.Start - x + middle, 0, last)];
    }

    private void Combine(int row, Span<float> target, ref ulong lit, float dose, float keep)
    {
        ulong any = 0,
            all = ulong.MaxValue;
        for (int i = 0; i < reached.Length; i++)
            (any, all) = (any | reached[i], all & full[i]);
        if (keep != 1)
            foreach ((int start, int end) in blocks.Runs(lit & ~any))
                Fade(target[start..end], keep);
        lit |= any;
        for (int i = 0; i < window.Length; i++)
            window[i] = rows[(row + i + radius + 1) % rows.Length];
        foreach ((int start, int end) in blocks.Runs(all))
            AddEverywhere(target[start..end], dose, keep);
        foreach ((int start, int end) in blocks.Runs(any & ~all))
            Add(target, start, end, dose, keep);
    }

    private static void Fade(Span<float> target, float keep)
    {
        int x = 0;
        for (; x + Vector<float>.Count <= target.Length; x += Vector<float>.Count)
            (new Vector<float>(target[x..]) * keep).CopyTo(target[x..]);
        for (; x < target.Length; x++)
            target[x] *= keep;
    }

    private static void AddEverywhere(Span<float> target, float dose, float keep)
    {
        int x = 0;
        for (; x + Vector<float>.Count <= target.Length; x += Vector<float>.Count)
            (new Vector<float>(target[x..]) * keep + new Vector<float>(dose)).CopyTo(target[x..]);
        for (; x < target.Length; x++)
            target[x] = target[x] * keep + dose;
    }

    // The window holds the rows around the target, its own in the middle.
    private void Add(Span<float> target, int start, int end, float dose, float keep)
    {
        int x = start;
        for (; x + Vector<float>.Count <= end; x += Vector<float>.Count)
        {
            Vector<float> sum = new Vector<float>(window[radius], x) * across[0];
            for (int i = 1; i <= radius; i++)
                sum +=
                    (new Vector<float>(window[radius - i], x) + new Vector<float>(window[radius + i], x)) * across[i];
            (new Vector<float>(target[x..]) * keep + sum * dose).CopyTo(target[x..]);
        }
        for (; x < end; x++)
        {
            float sum = window[radius][x] * across[0];
            for (int i = 1; i <= radius; i++)
                sum += (window[radius - i][x] + window[radius + i][x]) * across[i];
            target[x] = target[x] * keep + sum * dose;
        }
    }

    // Entry middle + d: the weight, seen from a pixel's middle, of all pixels before the one d to its right.
    private static float[] SumsBefore(PixelTaps taps)
    {
        int reach = taps.End;
        var sums = new float[2 * reach + 1];
        for (int d = -reach; d <= reach; d++)
            sums[d + reach] = (float)taps.Between(taps.First, d);
        return sums;
    }
}
