using System.Globalization;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning.Policy;
using CalibGeom.Verification.Uncertainty;
using static CalibGeom.Verification.Tuning.Words.TuningWords;

namespace CalibGeom.Verification.Tuning.Words;

/// <summary>The one verdict on the clearance, and how the order follows from it.</summary>
internal static class VerdictWords
{
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
        double seconds = Math.Abs(Missing(result) - last.Time);
        string all =
            result.Verdict == Verdict.Loose && result.Trials[^1].Columns is { Count: > 0 } c && c.All(k => k.Printed)
                ? " although every column stands"
                : "";
        return seconds > last.Time ? all : Text($"{all}, as by about {seconds:0.0} s of light {what}");
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

    private static string Opener(ExposureSettings last, ExposureSettings to) =>
        MovedWords.Of(to.Rest > last.Rest, to.EdgeOffset < last.EdgeOffset, "open") is { Length: > 0 } words
            ? $"; {words} the gap"
            : "";

    private static string Link(TuningResult result)
    {
        ExposureSettings last = result.Trials[^1].Settings,
            to = result.Next.Settings;
        bool brighter = to.Time > last.Time,
            dimmer = to.Time < last.Time;
        return result.Verdict switch
        {
            Verdict.OnTarget when brighter => "Light goes up for strength, not for the fit.",
            Verdict.OnTarget when dimmer => "Light goes down for tunnels and undersides, not for the fit.",
            Verdict.OnTarget when to.Rest > last.Rest =>
                "Rest goes up to learn whether it makes room, not because the fit asks for it.",
            Verdict.OnTarget when result.Next.Kind == NextKind.Change => "What is left is small, and free to take up.",
            Verdict.Tight when brighter && result.Next.Reason == Reason.Trim =>
                "A whole pixel of offset opens more than is wanted; light closes what is too much.",
            Verdict.Tight when brighter =>
                $"Light goes up all the same, because strength comes first{Opener(last, to)}.",
            Verdict.Tight when !dimmer && result.Next.Kind == NextKind.Change =>
                $"Light stays, because strength comes first{Opener(last, to)}.",
            Verdict.Loose when dimmer =>
                "Light goes down all the same, for tunnels and undersides; the edge offset closes the gap.",
            Verdict.Loose when !brighter && result.Next.Kind == NextKind.Change =>
                "Light stays: the resin has what it needs, and the edge offset closes the gap.",
            Verdict.Tight or Verdict.Loose when result.Next.Kind != NextKind.Change =>
                "Exposure, rest and offset are where they may go; the design has to take up the rest.",
            _ => "",
        };
    }
}
