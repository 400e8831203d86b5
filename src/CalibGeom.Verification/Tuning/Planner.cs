using CalibGeom.Verification.Logs;
using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Tuning;

/// <summary>Chooses the next settings within the step bounds.</summary>
internal sealed class Planner(
    IReadOnlyList<Trial> trials,
    ExposureResponse response,
    PrintThroughResponse? light,
    double target,
    TuneOptions options
)
{
    private const double OffsetStep = 0.001,
        LeastOffset = 0.002;
    private readonly ExposureSettings last = trials[^1].Settings;

    /// <summary>The recommendation, given how sure the last settings are.</summary>
    internal NextStep Next(IReadOnlyList<JointChance> chances)
    {
        double goalRest = GoalRest(),
            rest = NextRest(goalRest),
            goalTime = GoalTime(rest);
        bool sure = chances.All(c => c.OnTarget >= options.Probability) && LightAgrees();
        bool rested = rest - last.Rest < 0.05;
        bool confirmed = trials.Count(t => t.Settings.SameProcess(last)) >= 2;
        double time = NextTime(goalTime);
        ExposureSettings keep = Trimmed(last.Time, last.Rest);
        NextStep Step(NextKind kind, ExposureSettings settings) => new(kind, settings, goalTime, goalRest, keep);
        if (sure && rested && confirmed)
            return Step(NextKind.Stop, keep);
        if (time != last.Time || !rested)
            return Step(NextKind.Change, Trimmed(time, rested ? last.Rest : rest));
        if (sure)
            return Step(NextKind.Confirm, last);
        if (keep.EdgeOffset != last.EdgeOffset)
            return Step(NextKind.Change, keep);
        return Step(confirmed ? NextKind.NothingVisible : NextKind.Confirm, last);
    }

    /// <summary>The rest from which a further second probably gains less than is worth while.</summary>
    internal double GoalRest()
    {
        for (int tenths = 0; tenths < options.MostRest * 10; tenths++)
            if (response.RestGain(tenths / 10.0, options.RestDoubt) < options.RestGain)
                return tenths / 10.0;
        return options.MostRest;
    }

    private double NextRest(double goal)
    {
        if (goal <= last.Rest)
            return last.Rest;
        return Math.Min(options.MostRest, Math.Min(goal, last.Rest + options.MostRestStep));
    }

    private double NextTime(double goal)
    {
        double ratio = Math.Min(
            Math.Clamp(goal / last.Time, 1 - options.MostDown, 1 + options.MostUp),
            ExposureSettings.Longest / last.Time
        );
        if (Math.Abs(ratio - 1) < options.LeastStep)
            return last.Time;
        // Hundredths of a second, rounded so that no bound is crossed.
        double time = last.Time * ratio,
            rounded = Math.Round(time, 2);
        bool within =
            rounded <= last.Time * (1 + options.MostUp)
            && rounded >= last.Time * (1 - options.MostDown)
            && Math.Abs(rounded / last.Time - 1) >= options.LeastStep;
        return within ? rounded : time;
    }

    /// <summary>
    /// The exposure that holds the target without an edge offset, on the bright side by what is not known: light that
    /// is missing costs
    /// columns, light too much is taken back by an edge offset for nothing, as long as print-through allows.
    /// </summary>
    private double GoalTime(double rest)
    {
        double even = response.TimeFor(target, rest);
        double margin =
            Normal.InvCDF(0, 1, options.LightMargin)
            * response.At(new ExposureSettings(Math.Clamp(even, 0.01, 600), rest)).Uncertainty;
        double bright = response.TimeFor(target + margin, rest);
        if (light is null || light.At(bright).Mean <= options.MostPrintThrough)
            return bright;
        // Slots say that there is light enough: an edge offset closes the gap that is left.
        return even > last.Time ? Math.Clamp(light.TimeFor(options.MostPrintThrough), last.Time, even) : even;
    }

    /// <summary>Settings with the edge offset that takes up what is left, to the micrometre.</summary>
    private ExposureSettings Trimmed(double time, double rest)
    {
        double left = target - response.At(new ExposureSettings(time, rest)).Mean;
        double offset =
            Math.Abs(left - last.EdgeOffset) < LeastOffset
                ? last.EdgeOffset
                : Math.Round(left / OffsetStep) * OffsetStep;
        return new ExposureSettings(time, rest, Math.Clamp(offset, -1, 1));
    }

    private bool LightAgrees() => light is null || !light.ChangedIn(trials[^1]);
}
