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
/// <param name="GrowthPrints">From how many prints growth's effect was learnt; 0 when it is believed before.</param>
/// <param name="PrintThroughPrints">From how many prints print-through's was; 0 when it is believed before.</param>
public sealed record LearntEffects(
    LogNormalPrior Growth,
    LogNormalPrior PrintThrough,
    int GrowthPrints,
    int PrintThroughPrints
)
{
    /// <summary>What is believed before any print.</summary>
    public static LearntEffects None { get; } =
        new(ExposurePriors.Default.TimeEffect, ExposurePriors.Default.PenetrationDepth, 0, 0);

    /// <summary>
    /// Learns from the prints of a log that stand before the last state began, under the same conditions as it, and
    /// from its first print. Prints at one exposure alone teach nothing.
    /// </summary>
    /// <param name="log">The log in segments.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static LearntEffects Of(TrendLog log, CancellationToken cancellation = default)
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
        int withGrowth = Teaching(calibration, t => t.GrowthX is not null || t.GrowthY is not null),
            withThrough = Teaching(calibration, PrintThroughResponse.IsRead);
        PrintThroughResponse? light =
            withThrough > 0 ? PrintThroughResponse.Of(calibration, priors, cancellation: cancellation) : null;
        return new LearntEffects(
            withGrowth > 0
                ? ExposureResponse.Of(calibration, priors, cancellation: cancellation).TimeEffectNow
                : priors.TimeEffect,
            light is { Known: true } ? light.PenetrationDepthNow : priors.PenetrationDepth,
            withGrowth,
            light is { Known: true } ? withThrough : 0
        );
    }

    /// <summary>How many prints hold a reading, where they were exposed differently; else 0.</summary>
    private static int Teaching(Trial[] prints, Func<Trial, bool> holds)
    {
        Trial[] read = [.. prints.Where(holds)];
        return read.Select(t => t.Settings.Time).Distinct().Count() > 1 ? read.Length : 0;
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
