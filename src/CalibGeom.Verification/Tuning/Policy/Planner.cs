using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tuning.Policy;

/// <summary>Chooses the next settings: light, then rest, then offset.</summary>
internal sealed class Planner
{
    /// <summary>Prints of one kind from which on their mean is known well enough to act on alone.</summary>
    private const int Enough = 3;

    /// <summary>Rest is not moved by less than this, s: with tau of some seconds less hardly moves an edge.</summary>
    private const double LeastRestMove = 0.5;

    /// <summary>The least step of exposure that trims a clearance, as a share: 0.05 s at 2.5 s.</summary>
    private const double TrimStep = 0.02;

    /// <summary>
    /// The least step of exposure for columns, as a share: with m = 0.35 it lowers d50 by 5 %, an R40 step.
    /// </summary>
    private const double ColumnsStep = 0.15;

    /// <summary>By what factor exposure goes up where nothing came off the plate.</summary>
    private const double Doubling = 2;

    /// <summary>How many bounded steps of exposure one print may take where it trims a clearance.</summary>
    private const double TrimReach = 2;
    private readonly IReadOnlyList<Trial> trials;
    private readonly ExposureSettings last;
    private readonly ExposureResponse response;
    private readonly double target;
    private readonly TuneOptions options;
    private readonly LightNeed need;
    private readonly OffsetRule offsets;
    private readonly bool spoken;

    internal Planner(
        IReadOnlyList<Trial> trials,
        ExposureResponse response,
        ColumnSurvival? columns,
        PrintThroughResponse? light,
        double target,
        TuneOptions options
    )
    {
        this.trials = trials;
        this.response = response;
        this.target = target;
        this.options = options;
        last = trials[^1].Settings;
        spoken = SpeaksOfGrowth(trials);
        need = new LightNeed(trials, light, columns, options);
        offsets = new OffsetRule(trials[^1], options);
    }

    /// <summary>The recommendation.</summary>
    internal NextStep Next()
    {
        if (NothingPrinted(trials[^1]))
            return Step(
                NextKind.Change,
                Reason.NothingPrinted,
                new ExposureSettings(Rounded(last.Time * Doubling), last.Rest, last.EdgeOffset)
            );
        double goalRest = GoalRest(),
            rest = NextRest(goalRest);
        if (spoken && !offsets.Exact && !options.Hold.HasFlag(Held.Time))
            rest = RestThatHolds(rest);
        (double goal, Reason? why) = GoalTime(rest);
        double time = NextTime(goal, LeastStep(why), why);
        ExposureSettings next = Trimmed(time, rest);
        NextStep At(NextKind kind, Reason reason, ExposureSettings settings) =>
            new(kind, reason, settings, Trimmed(last.Time, last.Rest), goal, goalRest);
        if (time != last.Time)
            return At(NextKind.Change, why!.Value, next);
        if (rest != last.Rest)
            return At(NextKind.Change, Reason.Rest, next);
        int shown = PrintCount.Of(trials.Where(t => t.Settings.SameProcess(last)));
        double move = 2 * Math.Abs(next.EdgeOffset - last.EdgeOffset);
        bool taught = shown >= 2 && 2 * response.Lesson(last) < options.Visible;
        // The second print of a kind must agree with the first; from the third on their mean is known well enough to
        // take up what is left.
        bool agreed =
            shown >= Enough
                ? offsets.Exact || move < options.Visible / 2
                : move < options.Visible / 2 && Apart() <= options.Visible / 2;
        if (taught && agreed)
            return At(NextKind.Stop, Reason.Settled, next);
        return move >= Math.Max(options.OffsetStep, options.Visible / 2)
            ? At(NextKind.Change, Reason.Offset, next)
            : At(NextKind.Confirm, Reason.Confirm, last);
    }

    // How far the clearances of the prints with the last exposure and rest lie apart, mm; 0 where none was measured.
    private double Apart()
    {
        double[] clearances =
        [
            .. trials
                .Where(t => t.Settings.SameProcess(last) && t.GrowthX is not null && t.GrowthY is not null)
                .Select(t => t.GrowthX!.Value + t.GrowthY!.Value - 2 * t.Settings.EdgeOffset),
        ];
        return clearances.Length < 2 ? 0 : clearances.Max() - clearances.Min();
    }

    /// <summary>Whether nothing of a print speaks of growth and every column was lost.</summary>
    internal static bool NothingPrinted(Trial trial) =>
        trial.GrowthX is null
        && trial.GrowthY is null
        && trial.Joints.All(j => j.Fit is null)
        && trial.Columns.Count > 0
        && trial.Columns.All(c => !c.Printed);

    /// <summary>Whether some print was measured or felt, so that something is known of clearances.</summary>
    internal static bool SpeaksOfGrowth(IReadOnlyList<Trial> trials) =>
        trials.Any(t => t.GrowthX is not null || t.GrowthY is not null || t.Joints.Any(j => j.Fit is not null));

    /// <summary>The rest from which a further second gains less than is worth while.</summary>
    internal double GoalRest()
    {
        // The gain falls with rest, so that halving finds where it is too little, to a fifth of a second.
        int low = 0,
            high = (int)Math.Round(options.MostRest * 5);
        while (low < high)
            if (response.RestGain((low + high) / 2 / 5.0) < options.RestGain)
                high = (low + high) / 2;
            else
                low = (low + high) / 2 + 1;
        return low / 5.0;
    }

    private NextStep Step(NextKind kind, Reason reason, ExposureSettings settings) =>
        new(kind, reason, settings, last, settings.Time, settings.Rest);

    private double NextRest(double goal)
    {
        if (!spoken || options.Hold.HasFlag(Held.Rest) || goal - last.Rest < Math.Max(LeastRestMove, options.RestStep))
            return last.Rest;
        // Rest that went up once goes up again only for what the caliper can see.
        if (trials.Any(t => t.Settings.Rest < last.Rest) && 2 * response.RestRoom(last.Rest, goal) < options.Visible)
            return last.Rest;
        double rest = Math.Min(options.MostRest, Math.Min(goal, last.Rest + options.MostRestStep));
        return Math.Round(Math.Floor(rest / options.RestStep + 1e-9) * options.RestStep, 9);
    }

    // Where no offset takes up what is left: no longer rest where the fit would need more light than is allowed, and
    // more than is worth its time where it would need less than the resin needs.
    private double RestThatHolds(double rest)
    {
        if (options.Hold.HasFlag(Held.Rest) || Holds(last, options.Tolerance / 2))
            return last.Rest;
        double least = need.Floor(),
            most = Math.Max(least, Math.Min(options.MostTime, need.InDepth));
        double Off(double limit)
        {
            double time = offsets.TimeFor(rest, least, limit, target, response);
            return 2 * (response.At(Trimmed(time, rest)).Mean - target);
        }
        if (rest > last.Rest && Off(most) < -options.Visible)
            return last.Rest;
        bool tight = Off(Math.Max(least, Math.Min(need.InTime, most))) > options.Visible;
        return tight && response.RestGain(last.Rest) > options.RestGain / 4 ? LongerRest() : rest;
    }

    private bool Holds(ExposureSettings at, double within) => Math.Abs(2 * (response.At(at).Mean - target)) < within;

    private double LongerRest() =>
        Math.Round(Math.Min(Math.Max(last.Rest, options.MostRest), last.Rest + options.MostRestStep), 9);

    private (double Time, Reason? Why) GoalTime(double rest)
    {
        (double time, Reason? why) = need.Goal();
        if (options.Hold.HasFlag(Held.Time))
            return (last.Time, null);
        if (!spoken || offsets.Exact || why is not (null or Reason.Columns))
            return (time, why);
        double trimmed = Trimming(rest);
        return Math.Abs(2 * response.TimeEffect * Math.Log(trimmed / last.Time)) < options.Visible
            ? (last.Time, null)
            : (trimmed, Reason.Trim);
    }

    // Time is a matter of taste, a fit is not: where what print time allows misses it, light may go up to the limit of
    // print-through, but no further than the fit asks.
    private double Trimming(double rest)
    {
        double least = need.Floor(),
            inTime = Math.Min(need.InTime, need.InDepth),
            low = Math.Max(least, last.Time * (1 - TrimReach * options.MostDown)),
            high = Math.Max(low, Math.Min(inTime, last.Time * (1 + TrimReach * options.MostUp))),
            next = offsets.TimeFor(rest, low, high, target, response);
        // What one step reaches comes first: with two offsets in turn no print would be repeated.
        if (Holds(Trimmed(next, rest), options.Visible / 2))
            return next;
        double within = offsets.TimeFor(rest, least, inTime, target, response);
        if (Holds(Trimmed(within, rest), options.Visible / 2))
            return within;
        double most = Math.Max(inTime, Math.Min(options.MostTime, need.InDepth)),
            beyond = offsets.TimeFor(rest, inTime, most, target, response, dimmest: true);
        bool loose = 2 * (target - response.At(Trimmed(within, rest)).Mean) > options.Visible;
        return loose ? beyond : within;
    }

    // What only saves a few columns more must save an R40 step of them; what trims the clearance may be small.
    private double LeastStep(Reason? why) =>
        why switch
        {
            Reason.Trim => TrimStep,
            Reason.Columns => Math.Max(ColumnsStep, options.LeastStep),
            _ => options.LeastStep,
        };

    private double NextTime(double goal, double leastStep, Reason? why)
    {
        double far = why == Reason.Trim ? TrimReach : 1;
        double ratio = Math.Clamp(goal / last.Time, 1 - far * options.MostDown, 1 + far * options.MostUp);
        if (Math.Abs(ratio - 1) < leastStep)
            return last.Time;
        return Rounded(Math.Min(last.Time * ratio, options.MostTime));
    }

    // Toward the last exposure, so that no bound is crossed; at least one step of the machine.
    private double Rounded(double time)
    {
        double steps = time / options.TimeStep;
        double rounded = (time > last.Time ? Math.Floor(steps + 1e-9) : Math.Ceiling(steps - 1e-9)) * options.TimeStep;
        bool crossed = time > last.Time ? rounded <= last.Time : rounded >= last.Time;
        return Math.Min(ExposureSettings.Longest, Math.Round(crossed ? last.Time : rounded, 9));
    }

    private ExposureSettings Trimmed(double time, double rest) =>
        new(
            time,
            rest,
            spoken ? offsets.For(target - response.At(new ExposureSettings(time, rest)).Mean) : last.EdgeOffset
        );
}
