using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Maps;
using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// How growth and print-through answer to light on one machine, learnt from the prints of its calibration, in which the
/// exposure was changed: what trends and maps read light by. Immutable.
/// </summary>
/// <param name="Growth">mm for a factor e of light.</param>
/// <param name="PrintThrough">mm for a factor e of light: Dp.</param>
/// <param name="Prints">From how many prints; 0 when they do not tell more than what is believed before.</param>
public sealed record LearntEffects(LogNormalPrior Growth, LogNormalPrior PrintThrough, int Prints)
{
    /// <summary>What is believed before any print.</summary>
    public static LearntEffects None { get; } =
        new(ExposurePriors.Default.TimeEffect, ExposurePriors.Default.PenetrationDepth, 0);

    /// <summary>
    /// Learns from the prints of a log that stand before the last state began, under the same conditions as it, and
    /// from its first print. Prints at one exposure alone teach nothing.
    /// </summary>
    /// <param name="log">The log in segments.</param>
    public static LearntEffects Of(TrendLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        ExposurePriors priors = ExposurePriors.Default;
        Trial first = log.Current.Reference;
        Trial[] calibration =
        [
            .. log
                .Segments.Where(s => s != log.Current && s.DifferencesOf(first).Count == 0)
                .SelectMany(s => s.Entries)
                .OrderBy(e => e.Number)
                .Select(e => e.Trial),
            first,
        ];
        if (calibration.Select(t => t.Settings.Time).Distinct().Count() < 2)
            return None;
        LogNormalPrior growth = calibration.Any(t => t.GrowthX is not null || t.GrowthY is not null)
                ? ExposureResponse.Learn(calibration, priors).TimeEffectNow
                : priors.TimeEffect,
            through = PrintThroughResponse.Learn(calibration, priors) is { Known: true } light
                ? light.PenetrationDepthNow
                : priors.PenetrationDepth;
        return new LearntEffects(growth, through, calibration.Length);
    }

    /// <summary>Trend options that know it.</summary>
    /// <param name="options">The options otherwise.</param>
    public TrendOptions In(TrendOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        return options with { LightEffect = Growth, PenetrationDepth = PrintThrough };
    }

    /// <summary>Map options that know it.</summary>
    /// <param name="options">The options otherwise.</param>
    public MapOptions In(MapOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        return options with { LightEffect = Growth, PenetrationDepth = PrintThrough };
    }
}
