using System.Globalization;
using CalibGeom.Verification.Logs;
using static CalibGeom.Verification.Tuning.Words.TuningWords;

namespace CalibGeom.Verification.Tuning.Words;

/// <summary>Under what conditions the prints were made, where that matters.</summary>
internal static class ConditionWords
{
    // Common practice, without a source.
    private const double Cool = 22,
        Warm = 30;

    internal static IEnumerable<Finding> Of(TuningResult result)
    {
        foreach (Finding finding in Temperatures(result))
            yield return finding;
        if (result.Moved is { } chance)
            yield return new Finding(
                "process-moved",
                Severity.Warning,
                "",
                Text(
                    $"The newest prints differ from those before them under the same conditions by more than chance ({(chance < 0.001 ? "less than 0.1" : Text($"{100 * chance:0.0}"))} %): the calibrated state has ended, and older prints are not taken together with them."
                ),
                "What moved since, and when, is told by the trend of the log."
            );
        bool moved = result.Next.Settings.EdgeOffset != 0;
        if (moved && !result.Conditions.GreyLevels && result.Options.Pixel is null)
            yield return Note(
                "edge-offset",
                "Without grey-level edges an offset below one pixel moves "
                    + "only those edges that it carries across a pixel's centre.",
                "With the pixel pitch named, offsets are advised in whole pixels."
            );
        foreach (var alike in result.KeptApart.GroupBy(k => k.Why))
        {
            string kept =
                alike.Count() > 1
                    ? $"Trials {string.Join(", ", alike.Select(k => k.Number))} were kept apart"
                    : $"Trial {alike.First().Number} ({alike.First().Trial.Settings}) was kept apart";
            yield return Note("kept-apart", $"{kept}: {alike.Key}.", "Prints under other conditions are never pooled.");
        }
    }

    private static IEnumerable<Finding> Temperatures(TuningResult result)
    {
        if (result.Conditions.Temperature is { } vat and (< Cool or > Warm))
            yield return Note(
                "vat-temperature",
                Text($"The vat was at {vat:0.#} degrees C; most resins want {Cool:0} to {Warm:0} (common practice)."),
                "What is learnt holds at this temperature only."
            );
        int unknown = result.Trials.Count(t => t.Conditions.Temperature is null);
        if (unknown > 0 && unknown < result.Trials.Count)
            yield return Note(
                "temperature-unknown",
                $"The vat temperature of {unknown} of {result.Trials.Count} "
                    + "trials was not written down; they are taken together with the others.",
                "Beyond +-2 K trials are kept apart."
            );
        foreach (
            Trial trial in result.Trials.Where(t =>
                t.Conditions is { TemperatureStart: { } a, TemperatureEnd: { } b }
                && Math.Abs(b - a) > TrialConditions.TemperatureBand
            )
        )
            yield return new Finding(
                "temperature",
                Severity.Warning,
                "",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The vat went from {trial.Conditions.TemperatureStart} to "
                        + $"{trial.Conditions.TemperatureEnd} degrees C during a print "
                        + $"({trial.Settings})."
                ),
                "Vat and room warmed before printing keep it steady: growth "
                    + "and strength follow the resin's temperature."
            );
    }
}
