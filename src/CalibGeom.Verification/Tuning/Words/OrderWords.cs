using System.Globalization;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning.Policy;
using static CalibGeom.Verification.Tuning.Words.TuningWords;

namespace CalibGeom.Verification.Tuning.Words;

/// <summary>The one order and its one reason.</summary>
internal static class OrderWords
{
    internal static Finding Of(TuningResult result)
    {
        ExposureSettings to = result.Next.Settings;
        string settings = Settings(to);
        string order = result.Next.Kind switch
        {
            NextKind.Change => $"Print next with {settings}.",
            NextKind.Confirm => $"Print once more with {settings}.",
            _ => $"Stop: keep {settings}.",
        };
        return new Finding("next", Severity.Note, "", order, $"{Why(result)}{Minutes(result)}");
    }

    internal static string Settings(ExposureSettings s) =>
        Text($"{s.Time:0.###} s exposure, {s.Rest:0.###} s rest, {Offset(s.EdgeOffset)}");

    private static string Offset(double offset) =>
        offset == 0 ? "no edge offset" : Text($"edge offset {offset:+0.000;-0.000} mm");

    private static string Why(TuningResult result)
    {
        Trial last = result.Trials[^1];
        double time = last.Settings.Time,
            layer = last.Conditions.Layer;
        TuneOptions o = result.Options;
        string taken = Meanwhile(last.Settings, result.Next.Settings);
        return result.Next.Reason switch
        {
            Reason.NothingPrinted => "Nothing came off the plate, so the light is doubled; base "
                + "exposure, level and plate deserve a look, and no offset "
                + "is of use yet.",
            Reason.Layers => string.Create(
                CultureInfo.InvariantCulture,
                $"One exposure cures about {result.PrintThrough!.CuredLayers(time, layer):0.0} "
                    + $"layers, and {o.LeastLayers:0.0#} are needed.{taken}"
            ),
            Reason.WantedColumn => string.Create(
                CultureInfo.InvariantCulture,
                $"With the light of the last print columns of {o.WantedColumn:0.00#} mm stand in "
                    + $"{100 * result.Columns!.Probability(o.WantedColumn!.Value, time):0} % of cases only.{taken}"
            ),
            Reason.Columns => "More light still saves columns, and print time and print-through allow it." + taken,
            Reason.PrintThrough => string.Create(
                CultureInfo.InvariantCulture,
                $"Light passes through ceilings by more than {o.MostPrintThrough:0.00} "
                    + $"mm, so there is light to spare.{taken}"
            ),
            Reason.Trim => $"No edge offset takes up what is left, so exposure trims it{Goal(result)}.",
            Reason.Rest when result.Next.Settings.Rest > result.Next.GoalRest =>
                $"Rest draws edges back: more of it than is worth its time otherwise, because the joint {Tight(result)} without; exposure stays as it is.",
            Reason.Rest => "Rest draws edges back and is still worth its time; exposure stays as it is.",
            Reason.Offset =>
                $"Exposure and rest stay as they are; {MovedWords.Offset(result.Next.Settings)} takes up what is left, free of print time.",
            Reason.Confirm => string.Create(
                CultureInfo.InvariantCulture,
                $"{Shown(result)} still leaves {2 * result.Response.Lesson(last.Settings):0.000} "
                    + $"mm of clearance that another may move."
            ),
            Reason.Doubt =>
                "The last print is off by itself, where all before it were settled: another tells whether the process has moved. Until then it is not taken in.",
            _ => Text($"Another print is not expected to move the clearance by {o.Visible:0.000} mm.{Taken(result)}"),
        };
    }

    private static string Meanwhile(ExposureSettings last, ExposureSettings to)
    {
        string words = MovedWords.Of(to.Rest != last.Rest, to.EdgeOffset != last.EdgeOffset, to, "hold");
        return words.Length > 0 ? $" {char.ToUpperInvariant(words[0])}{words[1..]} the clearance meanwhile." : "";
    }

    // What is not tight yet may become so, where the offset of the last print goes.
    private static string Tight(TuningResult result) =>
        result.Verdict == Verdict.Tight ? "stays tight"
        : result.Next.Settings.EdgeOffset == 0 && result.Trials[^1].Settings.EdgeOffset != 0
            ? "drawn at full size again would be tight"
        : "would be tight";

    // A step is bounded; what it leaves off target is for the next ones.
    private static string Goal(TuningResult result)
    {
        double goal = result.Next.GoalTime,
            time = result.Next.Settings.Time;
        return Math.Abs(goal / time - 1) < result.Options.LeastStep
            ? ""
            : Text($", step by step to about {goal:0.0} s");
    }

    private static string Taken(TuningResult result)
    {
        double last = result.Trials[^1].Settings.EdgeOffset;
        return result.Next.Settings.EdgeOffset == last
            ? ""
            : Text($" The last print had an edge offset of {last:+0.000;-0.000;0} mm; the mean of all says this one.");
    }

    private static string Shown(TuningResult result) =>
        PrintCount.Of(result.Trials.Where(t => t.Settings.SameProcess(result.Trials[^1].Settings))) is var n && n == 1
            ? "One print with this exposure and rest"
            : $"The mean of {n} prints with this exposure and rest";

    private static string Minutes(TuningResult result)
    {
        Trial last = result.Trials[^1];
        double layer = last.Conditions.Layer,
            height = result.Options.ProductionHeight,
            change =
                (
                    last.Cycle.PrintTime(result.Next.Settings, layer, height)
                    - last.Cycle.PrintTime(last.Settings, layer, height)
                ) / 60;
        if (Math.Abs(change) < 0.5)
            return "";
        // Where another exposure was named last, the minutes are told of the one that is ordered.
        return result.Next.Reason == Reason.Trim && Goal(result).Length > 0
            ? Text($" With {result.Next.Settings.Time:0.###} s a part {height:0} mm tall takes {change:+0;-0} minutes.")
            : Text($" A part {height:0} mm tall then takes {change:+0;-0} minutes.");
    }
}
