using System.Globalization;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning.Policy;
using CalibGeom.Verification.Uncertainty;
using static CalibGeom.Verification.Tuning.Words.TuningWords;

namespace CalibGeom.Verification.Tuning.Words;

/// <summary>The one verdict on the clearance, and how the order follows from it.</summary>
internal static class VerdictWords
{
    private const double MostTimes = 3;

    internal static Finding Of(TuningResult result)
    {
        if (result.Verdict == Verdict.NotKnown && result.Trials[^1].Joints.Count == 0)
            return Note(
                "fit-not-known",
                "Nothing was measured on this object, which has no joint: only light and columns are spoken of."
            );
        if (result.Verdict == Verdict.NotKnown)
            return new Finding(
                "fit-not-known",
                Severity.Warning,
                "",
                "No box was measured and no fit was felt: nothing is known of clearances.",
                "Box widths or felt fits would tell."
            );
        (string rule, string word, string remedy) = result.Verdict switch
        {
            Verdict.OnTarget => ("on-target", "On target", Link(result)),
            Verdict.Tight => ("tight", Word(result, "Tight", "Grown") + As(result, "too much"), Link(result)),
            Verdict.Loose => ("loose", Word(result, "Loose", "Shrunk") + As(result, "too little"), Link(result)),
            _ => (
                "not-told-yet",
                $"Whether the {Word(result, "clearance", "growth")} is on target cannot be told yet",
                Tells(result)
            ),
        };
        return Note(rule, $"{word}: {Clearance(result)}.", remedy);
    }

    /// <summary>An object without joints has growth and no clearance: nothing of it is tight or loose.</summary>
    private static string Word(TuningResult result, string ofAJoint, string ofGrowth) =>
        result.Trials[^1].Joints.Count > 0 ? ofAJoint : ofGrowth;

    private static string Clearance(TuningResult result)
    {
        Trial last = result.Trials[^1];
        GrowthPrediction g = result.Response.At(last.Settings, withCaliper: false);
        if (last.Joints.Count == 0)
            return string.Create(
                CultureInfo.InvariantCulture,
                $"edges have grown by {g.Mean:0.000} +- {Coverage.NormalFactor * g.Uncertainty:0.000} mm (95 %) at the last settings, wanted "
                    + $"{result.TargetGrowth:0.000}"
            );
        double designed = (last.Joints[0].Designed + last.Joints[0].DesignedY) / 2,
            wanted = designed - 2 * result.TargetGrowth,
            most = new[] { result.Chances.OnTarget, result.Chances.Tight, result.Chances.Loose }.Max();
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{last.Joints[0].Id} has {designed - 2 * g.Mean:0.000} +- {2 * Coverage.NormalFactor * g.Uncertainty:0.000} "
                + $"mm (95 %) at the last settings, wanted {wanted:0.000} +- {result.Options.Tolerance:0.000} "
                + $"({100 * Math.Min(most, 0.99):0} % sure)"
        );
    }

    // As if light were too much or too little: the size of the miss in a unit that is felt at the bench, not an order.
    private static string As(TuningResult result, string what)
    {
        ExposureSettings last = result.Trials[^1].Settings;
        double missing = Missing(result);
        string all =
            result.Verdict == Verdict.Loose && result.Trials[^1].Columns is { Count: > 0 } c && c.All(k => k.Printed)
                ? " although every column stands"
                : "";
        // Beyond a third and three times the light it would be read far outside of what was printed.
        return missing > MostTimes * last.Time || missing * MostTimes < last.Time
            ? all
            : Text($"{all}, as by about {Math.Abs(missing - last.Time):0.0} s of light {what}");
    }

    private static double Missing(TuningResult result)
    {
        ExposureSettings last = result.Trials[^1].Settings;
        double off = result.TargetGrowth - result.Response.At(last).Mean;
        return last.Time * Math.Exp(off / Math.Max(result.Response.TimeEffect, 1e-6));
    }

    private static string Tells(TuningResult result) =>
        result.Next.Kind == NextKind.Stop
            ? $"No further print would tell it with this caliper; {(IsFelt(result) ? "a gauge block" : "a felt fit")} or a wider tolerance would."
            : "The next print, measured the same way, will tell more.";

    private static bool IsFelt(TuningResult result) => result.Trials.Any(t => t.Joints.Any(j => j.Fit is not null));

    private static string Link(TuningResult result) =>
        result.Next.Reason == Reason.Doubt ? ""
        : result.Next.Kind != NextKind.Change && result.Verdict is Verdict.Tight or Verdict.Loose ? Left(result)
        : LinkWords.Of(result);

    // An answer that ends, or repeats, may still order the offset that takes up what is left.
    private static string Left(TuningResult result)
    {
        ExposureSettings to = result.Next.Settings;
        if (to == result.Trials[^1].Settings)
            return "Exposure, rest and offset are where they may go; the design has to take up the rest.";
        string moved = MovedWords.Offset(to);
        double off = 2 * Math.Abs(result.Response.At(to).Mean - result.TargetGrowth);
        return off <= result.Options.Tolerance
            ? $"{char.ToUpperInvariant(moved[0])}{moved[1..]} takes that up."
            : $"{char.ToUpperInvariant(moved[0])}{moved[1..]} takes up some of that; the design has to take up the rest.";
    }
}
