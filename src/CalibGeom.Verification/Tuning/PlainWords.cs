using System.Globalization;
using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// What the trials mean, in sentences; <see cref="CaseWords"/> has those for fit, columns and slots. Causes beyond
/// exposure are common practice, without a published source.
/// </summary>
internal static class PlainWords
{
    private const double LeastDifference = 0.004;
    private const double FarRatio = 4;
    private const string Causes =
        "Look, in this order, at vat temperature, film (slack, cloudy), screen and glass (dust, cured spots), Z "
        + "axis (play, dirt), and whether the resin was stirred or is another one.";

    internal static IReadOnlyList<Finding> Of(TuningResult result)
    {
        var said = new List<Finding> { Next(result), FitColumnsSlots(result) };
        said.AddRange(Axes(result));
        said.AddRange(Columns(result));
        said.AddRange(Light(result));
        said.AddRange(Convergence(result));
        said.AddRange(Rest(result));
        if (result.Next.Settings.EdgeOffset != result.Trials[^1].Settings.EdgeOffset && !result.Conditions.GreyLevels)
            said.Add(
                Note(
                    "edge-offset",
                    "",
                    "Without grey-level edges an offset below one pixel moves only those edges that it carries "
                        + "across a pixel's centre.",
                    "Turn grey-level edges on, or expect some faces to stay."
                )
            );
        foreach (var alike in result.KeptApart.GroupBy(k => k.Why))
        {
            string numbers = string.Join(", ", alike.Select(k => k.Number));
            string kept =
                alike.Count() > 1
                    ? $"Trials {numbers} were kept apart"
                    : $"Trial {numbers} ({alike.First().Trial.Settings}) was kept apart";
            said.Add(
                Note("kept-apart", "", $"{kept}: {alike.Key}.", "Prints under other conditions are never pooled.")
            );
        }
        return said;
    }

    private static Finding Next(TuningResult result)
    {
        ExposureSettings last = result.Trials[^1].Settings,
            to = result.Next.Settings;
        string offset =
            to.EdgeOffset != last.EdgeOffset
                ? Text($" Enter an edge offset of {to.EdgeOffset:+0.000;-0.000;0} mm (free of print time).")
                : "";
        string minutes = Minutes(result, last, to);
        (string message, string remedy) = result.Next.Kind switch
        {
            NextKind.Stop => (
                Text($"Stop: on target and confirmed at {last}.{offset}"),
                "Print a witness coupon now and then to see drift."
            ),
            NextKind.Confirm => (
                Text($"Print once more with {last} to confirm."),
                "One print on target may be chance: prints at the same settings differ by about 0.005 mm."
            ),
            NextKind.NothingVisible => (
                Text($"No change your caliper can see: keep {last}."),
                "What is left is the caliper's own error and the spread between prints. Read a gauge block or "
                    + "pin with the same jaws, or trust the felt fit."
            ),
            _ => (Text($"Print next with {to}.{offset}{minutes}"), Bounded(result)),
        };
        return new Finding("next", Severity.Note, "", message, remedy);
    }

    private static string Bounded(TuningResult result)
    {
        double ratio = result.Next.GoalTime / result.Next.Settings.Time;
        if (Math.Abs(ratio - 1) < result.Options.LeastStep)
            return "";
        return IsFar(ratio)
            ? "One step of the way: the target lies beyond anything like these exposures. Check it, or change "
                + "the designed clearance."
            : string.Create(
                CultureInfo.InvariantCulture,
                $"One step of the way: with this rest about {result.Next.GoalTime:0.00#} s is aimed at, on the "
                    + $"bright side of what is not known."
            );
    }

    /// <summary>Whether an exposure is so many times another that the fitted logarithm says nothing about it.</summary>
    private static bool IsFar(double ratio) => ratio is > FarRatio or < 1 / FarRatio;

    private static string Minutes(TuningResult result, ExposureSettings from, ExposureSettings to)
    {
        Trial last = result.Trials[^1];
        double layer = last.Conditions.Layer,
            height = result.Options.ProductionHeight;
        double change = (last.Cycle.PrintTime(to, layer, height) - last.Cycle.PrintTime(from, layer, height)) / 60;
        return Math.Abs(change) < 0.5 ? "" : Text($" A part {height:0} mm tall then takes {change:+0;-0} minutes.");
    }

    private static Finding FitColumnsSlots(TuningResult result)
    {
        if (
            !result.Trials.Any(t =>
                t.GrowthX is not null || t.GrowthY is not null || t.Joints.Any(j => j.Fit is not null)
            )
        )
            return new Finding(
                "fit-not-known",
                Severity.Warning,
                "",
                "No box was measured and no fit was felt: clearances here are what we assume, not results.",
                "Measure box widths or feel the fits, and log the print with them."
            );
        Trial last = result.Trials[^1];
        double goal = result.Response.TimeFor(result.TargetGrowth, last.Settings.Rest, last.Settings.EdgeOffset),
            step = goal - last.Settings.Time;
        double ratio = goal / last.Settings.Time,
            least = result.Options.LeastStep;
        bool loose = ratio >= 1 + least,
            tight = ratio <= 1 - least;
        bool? missing =
            last.Columns.Count == 0
                ? null
                : last.Columns.Any(c => !c.Printed && c.Diameter >= (result.Options.WantedColumn ?? 0));
        bool? closed = last.Slots is null ? null : last.Slots.HighestClosed >= result.Options.MostPrintThrough;
        string about =
            IsFar(ratio) ? "far"
            : Math.Abs(step) >= 0.095 ? Text($"about {Math.Abs(step):0.0} s")
            : Text($"about {Math.Abs(step):0.00#} s");
        string all = result.Options.WantedColumn is null ? "every column" : "every column you need";
        int fit =
            loose ? 1
            : tight ? -1
            : 0;
        double bare = result.Response.TimeFor(result.TargetGrowth, last.Settings.Rest) / last.Settings.Time;
        bool byOffset = fit != 0 && last.Settings.EdgeOffset * fit < 0 && (loose ? bare < 1 + least : bare > 1 - least);
        (string main, string remedy) = byOffset
            ? CaseWords.ByEdgeOffset(fit, missing, last.Settings.EdgeOffset)
            : CaseWords.Of(fit, missing, closed, about, all, OpenSlots(last.Slots));
        string rule =
            loose ? "loose"
            : tight ? "tight"
            : "on-target";
        return new Finding(
            rule,
            loose || tight || missing == true || closed == true ? Severity.Warning : Severity.Note,
            "",
            main,
            remedy
        );
    }

    private static string OpenSlots(SlotOutcome? slots) =>
        slots is null || slots.Open == slots.Heights.Count ? "the slots are open"
        : slots.Open == 0 ? "print-through is within its limit"
        : Text($"the slots from {slots.LowestOpen} mm on are open");

    private static IEnumerable<Finding> Axes(TuningResult result)
    {
        GrowthPrediction d = result.Response.AxisDifference;
        if (Math.Abs(d.Mean) < LeastDifference || Math.Abs(d.Mean) < 2 * d.Uncertainty)
            yield break;
        string larger = d.Mean > 0 ? "X" : "Y",
            smaller = d.Mean > 0 ? "Y" : "X";
        yield return new Finding(
            "axes-differ",
            Severity.Warning,
            "",
            string.Create(
                CultureInfo.InvariantCulture,
                $"Solids grow {Math.Abs(d.Mean):0.000} mm more per edge along {larger} than along {smaller}: "
                    + $"that is pixels, not exposure."
            ),
            "Check whole-pixel sizes, the pixel pitch of each axis and the scale of each axis in the slicer; no "
                + "exposure will cure it."
        )
        {
            Value = d.Mean,
            Limit = 2 * d.Uncertainty,
            Unit = "mm",
        };
    }

    private static IEnumerable<Finding> Columns(TuningResult result)
    {
        Trial last = result.Trials[^1];
        foreach (ColumnOutcome column in ColumnSurvival.OutOfOrder(last))
            yield return new Finding(
                "out-of-order",
                Severity.Warning,
                column.Id,
                Text($"A column of {column.Diameter} mm was lost although thinner ones stand."),
                "That is adhesion, dirt or a bubble rather than exposure: look at the foot and at the film "
                    + "below it. The column limit counts it all the same."
            );
        int later = last.Columns.Count(c => c.Printed && c.Stood != Readings.ColumnStage.Cure);
        if (later > 0)
            yield return new Finding(
                "lost-later",
                Severity.Note,
                "",
                $"{later} of {last.Columns.Count} columns were lost after the plate, in wash or cure.",
                "They are counted as printed: handle more gently, wash shorter; exposure is not to blame."
            );
        if (result.Columns is not { } survival)
            yield break;
        ColumnLimit limit = survival.Limit(result.Next.Settings.Time);
        string bracket = (limit.Low > 0, double.IsFinite(limit.High)) switch
        {
            (true, true) => Text($"{limit.Low:0.00} to {limit.High:0.00} mm"),
            (true, false) => Text($"above {limit.Low:0.00} mm"),
            (false, true) => Text($"below {limit.High:0.00} mm"),
            _ => "not known",
        };
        if (survival.Lost == 0)
            yield return Note(
                "column-limit",
                "",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Every column stood: at the recommended settings more than half should print from "
                        + $"{limit.High:0.00} mm on, and how far below is not known."
                ),
                ""
            );
        else if (survival.Lost == survival.Count)
            yield return Note(
                "column-limit",
                "",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Every column was lost: at the recommended settings fewer than half should print up to "
                        + $"{limit.Low:0.00} mm, and from where on is not known."
                ),
                ""
            );
        else
            yield return new Finding(
                "column-limit",
                Severity.Note,
                "",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Half the columns of {limit.Diameter:0.00} mm should print at the recommended settings (95 "
                        + $"%: {bracket})."
                ),
                ""
            )
            {
                Value = limit.Diameter,
                Unit = "mm",
            };
        if (Loads(result, limit.Diameter, last) is { } loads)
            yield return loads;
        if (survival.RestEffect is { } z && Math.Abs(z) > 2)
            yield return Note(
                "rest-and-columns",
                "",
                $"Rest itself {(z > 0 ? "helps" : "harms")} columns in these trials, apart from exposure.",
                ""
            );
    }

    private static Finding? Loads(TuningResult result, double diameter, Trial last)
    {
        double head = last.Columns.Select(c => c.HeadDiameter).DefaultIfEmpty(0).Max();
        if (head <= diameter)
            return null;
        string ratio = string.Create(
            CultureInfo.InvariantCulture,
            $"Peeling loads a column of {diameter:0.00} mm {head * head / (diameter * diameter):0} times as "
                + $"much as its own section (load ratio)"
        );
        if (result.Options.Modulus is not { } modulus)
            return Note("column-loads", "", ratio + ".", "");
        var loads = new ColumnLoads(diameter, result.Options.ColumnHeight, head, modulus);
        return Note(
            "column-loads",
            "",
            string.Create(
                CultureInfo.InvariantCulture,
                $"{ratio}: a peel pressure of 0.01 MPa pulls with {loads.PeelStress(0.01):0.00} MPa; it buckles "
                    + $"at {loads.BucklingLoad:0.000} N; 0.01 N across its head bends its foot with "
                    + $"{loads.BendingStress(0.01):0.0} MPa."
            ),
            "For comparison only: strengths of green resin have no usable published table."
        );
    }

    private static IEnumerable<Finding> Light(TuningResult result)
    {
        if (result.PrintThrough is not { } light)
            yield break;
        GrowthPrediction z = light.At(result.Next.Settings.Time);
        yield return new Finding(
            "print-through",
            Severity.Note,
            "slots.open",
            string.Create(
                CultureInfo.InvariantCulture,
                $"Print-through should be {z.Mean:0.00} +- {2 * z.Uncertainty:0.00} mm at the recommended "
                    + $"exposure (Dp about {light.PenetrationDepth:0.00} mm, dose under a ceiling about "
                    + $"{light.DoseRatio(result.Next.Settings.Time):0.0} times the critical one)."
            ),
            ""
        )
        {
            Value = z.Mean,
            Unit = "mm",
        };
        if (light.ChangedIn(result.Trials[^1]))
            yield return new Finding(
                "light-changed",
                Severity.Warning,
                "slots.open",
                "The slots of the last print do not fit its exposure time: the light was not what the time says.",
                "Check lamp, screen and glass, and whether the resin was stirred, before changing exposure."
            );
    }

    private static IEnumerable<Finding> Convergence(TuningResult result)
    {
        int count = result.Trials.Count;
        bool badFit = count >= 3 && result.Response.FitProbability is < 0.05;
        bool late =
            count >= 5
            && result.Next.Kind == NextKind.Change
            && !result.Next.Settings.SameProcess(result.Trials[^1].Settings);
        if (badFit)
            yield return new Finding(
                "lack-of-fit",
                Severity.Warning,
                "",
                Text($"The trials do not follow one response (probability {result.Response.FitProbability:0.000})."),
                Causes
            )
            {
                Value = result.Response.FitProbability,
                Limit = 0.05,
            };
        if (late)
            yield return new Finding(
                "not-converging",
                Severity.Warning,
                "",
                $"{count} prints have not settled.",
                Causes
            );
        if (result.Response.CurvatureRatio is { } ratio && Math.Abs(ratio) > 2)
            yield return Note(
                "curved",
                "",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Growth does not follow a straight line in the logarithm of exposure (ratio {ratio:0.0}): "
                        + $"trust small steps only."
                ),
                ""
            );
        int unknown = result.Trials.Count(t => t.Conditions.Temperature is null);
        if (unknown > 0 && unknown < count)
            yield return Note(
                "temperature-unknown",
                "",
                $"The vat temperature of {unknown} of {count} trials was not written down; they are taken "
                    + $"together with the others.",
                "Write it down: beyond +-2 K trials are kept apart."
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
                        + $"{trial.Conditions.TemperatureEnd} degrees C during a print ({trial.Settings})."
                ),
                "Warm vat and room before printing: growth and strength follow the resin's temperature."
            );
    }

    private static IEnumerable<Finding> Rest(TuningResult result)
    {
        double rest = result.Next.Settings.Rest,
            gain = result.Response.RestGain(rest) * 1000,
            goal = result.Next.GoalRest;
        string worth =
            rest >= goal - 0.05
                ? "not worth its time"
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"resting is worth its time up to {goal:0.0} s, where the chance of gaining "
                        + $"{result.Options.RestGain * 1000:0.#} falls to {100 * result.Options.RestDoubt:0} %"
                );
        yield return Note(
            "rest",
            "",
            Text($"A further second of rest beyond {rest:0.0} s should gain {gain:0.0} micrometres per edge: {worth}."),
            ""
        );
    }

    private static Finding Note(string rule, string subject, string message, string remedy) =>
        new(rule, Severity.Note, subject, message, remedy);

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
