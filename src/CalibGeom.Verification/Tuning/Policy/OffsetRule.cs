using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tuning.Policy;

/// <summary>
/// Which edge offsets can be had: any step of the slicer, whole pixels without grey levels, the one that is held, or
/// none.
/// </summary>
internal sealed class OffsetRule
{
    // mm, and whole pixels: beyond it is not growth that is taken off, but a wrong scale or another print.
    private const double Most = 0.2;
    private const int MostPixels = 4;
    private readonly double step;
    private readonly double? held;

    internal OffsetRule(Trial last, TuneOptions options)
    {
        bool whole = options.Pixel is not null && !last.Conditions.GreyLevels;
        step = whole ? options.PixelMove!.Value : options.OffsetStep;
        held =
            !options.OffsetAllowed ? 0
            : options.Hold.HasFlag(Held.Offset) ? last.Settings.EdgeOffset
            : null;
        Exact = held is null && 2 * step <= options.Visible;
    }

    /// <summary>Whether an offset can take up whatever is left.</summary>
    internal bool Exact { get; }

    /// <summary>The offset that comes closest to a wish, mm.</summary>
    internal double For(double wish) => held ?? Math.Round(Math.Clamp(Math.Round(wish / step) * step, -Most, Most), 9);

    /// <summary>
    /// The exposure that holds the target with some offset that can be had: the brightest between two limits or, if so
    /// wanted, the dimmest; where there is none, the limit that comes closest.
    /// </summary>
    internal double TimeFor(
        double rest,
        double least,
        double most,
        double target,
        ExposureResponse response,
        bool dimmest = false
    )
    {
        double? best = null;
        double closest = least,
            miss = double.PositiveInfinity;
        foreach (double offset in Offered())
        {
            double time = response.TimeFor(target, rest, offset),
                within = Math.Clamp(time, least, Math.Max(least, most)),
                off = Math.Abs(Math.Log(time / within));
            if (off == 0 && (best is not { } known || (dimmest ? time < known : time > known)))
                best = time;
            if (off < miss)
                (miss, closest) = (off, within);
        }
        return best ?? closest;
    }

    private IEnumerable<double> Offered()
    {
        if (held is { } one)
            return [one];
        int most = Math.Min(MostPixels, (int)(Most / step));
        return Enumerable.Range(-most, 2 * most + 1).Select(n => n * step);
    }
}
