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
        (int growth, int through) = (effects.GrowthPrints, effects.PrintThroughPrints);
        string source =
            growth > 0 && through > 0
                ? $"How gauges answer to light was learnt from {Math.Max(growth, through)} prints of this log"
            : growth > 0
                ? $"How growth answers to light was learnt from {growth} prints of this log, how print-through does is taken from experience"
            : through > 0
                ? $"How print-through answers to light was learnt from {through} prints of this log, how growth does is taken from experience"
            : "How gauges answer to light is taken from experience";
        return new Finding(
            "light-effects",
            Severity.Note,
            "",
            $"{source}: {numbers}.",
            growth > 0 && through > 0
                ? ""
                : "A log that holds the calibration, in which the exposure was changed and both were read, tells it of this machine."
        );
    }
}
