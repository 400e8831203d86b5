using CalibGeom.Verification.Tuning;

namespace CalibGeom.Cli.Shared;

/// <summary>By which effects light is read, and whether this machine taught them.</summary>
internal static class EffectWords
{
    internal static Finding Of(LearntEffects effects)
    {
        string numbers = FormattableString.Invariant(
            $"growth by {effects.Growth.Median:0.000} mm ({effects.Growth.Low:0.000} to {effects.Growth.High:0.000}), print-through by {effects.PrintThrough.Median:0.000} mm ({effects.PrintThrough.Low:0.000} to {effects.PrintThrough.High:0.000}) for a factor e of light"
        );
        return effects.Prints > 0
            ? new Finding(
                "light-effects",
                Severity.Note,
                "",
                $"How gauges answer to light was learnt from {effects.Prints} prints of this log: {numbers}.",
                ""
            )
            : new Finding(
                "light-effects",
                Severity.Note,
                "",
                $"How gauges answer to light is taken from experience: {numbers}.",
                "A log that holds the calibration, in which the exposure was changed, tells it of this machine."
            );
    }
}
