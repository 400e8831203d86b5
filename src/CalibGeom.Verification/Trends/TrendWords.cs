using System.Globalization;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Trends;

/// <summary>The answer in sentences that do not contradict each other.</summary>
internal sealed class TrendWords
{
    private const double LeastChance = 0.05;
    private readonly TrendAnswer answer;
    private readonly TrendResult result;
    private readonly List<Finding> findings = [];

    private TrendWords(TrendAnswer answer) => (this.answer, result) = (answer, answer.Result);

    internal static IReadOnlyList<Finding> Of(TrendAnswer answer)
    {
        var words = new TrendWords(answer);
        words.Verdict();
        words.Evidence();
        return [.. words.findings, .. SurroundingWords.Of(answer)];
    }

    private void Verdict()
    {
        (string message, string remedy) = answer.Verdict switch
        {
            TrendVerdict.NotSeenToMove => (
                $"Not seen to move: {Count(result.Points.Count)}. {WouldBe()}",
                "Keep the settings."
            ),
            TrendVerdict.Drifting => (
                $"Drifting, {Within(result.Change!)}: {Moved()}.",
                answer.Correction is null
                    ? "Print the next coupon sooner."
                    : "Correct the exposure, or print the next coupon sooner."
            ),
            TrendVerdict.NotEnoughData => ($"Not enough data: {Why()}", More()),
            _ => Recalibrate(),
        };
        Say(
            "trend-verdict",
            answer.Verdict switch
            {
                TrendVerdict.Recalibrate => Severity.Error,
                TrendVerdict.Drifting => Severity.Warning,
                _ => Severity.Note,
            },
            Name(answer.Log.Current),
            message,
            remedy
        );
    }

    private (string, string) Recalibrate()
    {
        var reasons = answer.Triggers.Select(t => t.Reason).ToList();
        if (result.Change is { } change)
        {
            string held = change.IsRatherChance ? "which is no more likely a change than chance" : Within(change);
            reasons.Insert(0, Sentence($"{Moved()}, {held}"));
        }
        string remedy =
            answer.Triggers.Count > 0 ? "Calibrate anew: print the test object and let tune say the settings."
            : answer.Correction is { } c
                ? Text($"Print {c.Settings.Time:0.##} s and confirm it with one coupon, or calibrate anew.")
            : "Calibrate anew: print the test object and let tune say the settings.";
        return ($"Recalibrate now. {string.Join(" ", reasons)}", remedy);
    }

    private void Evidence()
    {
        if (result.Change is { IsRatherChance: true } doubtful)
            Light(doubtful);
        else if (result.Change is { } change)
        {
            Size(change);
            Light(change);
            Since(change);
            if (answer.Triggers.Count == 0)
                Correct(change);
        }
        else if (answer.Verdict == TrendVerdict.Recalibrate && result.Points.Count > result.Options.Baseline)
            Say("trend-coupons", Severity.Note, "", $"The coupons themselves show no movement. {WouldBe()}", "");
        Say(
            "trend-run-length",
            Severity.Note,
            "",
            Text(
                $"While nothing moves, one false alarm comes in about {result.Options.RunLength:0} coupons; each chart gives one in {10 * result.Options.RunLength:0}."
            ),
            ""
        );
        foreach (
            GaugeCharts chart in result.Charts.Where(c =>
                c.RangeRatio > 1.6 && c.Points.Count >= 6 && c.Name != "light"
            )
        )
            Say(
                "trend-scatter",
                Severity.Note,
                chart.Name,
                Text(
                    $"Neighbouring coupons differ by {chart.RangeRatio:0.0} times what was stated for {chart.Name}; the answer allows for it."
                ),
                "Look at how coupons are washed, dried and measured, or state a larger deviation between prints."
            );
    }

    private void Size(TrendChange change)
    {
        var parts = new List<string>();
        if (change.Growth is { } growth)
            parts.Add(
                $"growth by {Mm(growth)}, so the clearance by {Mm(new Amount(-2 * growth.Value, -2 * growth.High, -2 * growth.Low))} per side"
            );
        if (change.PrintThrough is { } through)
            parts.Add($"print-through by {Mm(through)}");
        if (parts.Count > 0)
            Say("trend-size", Severity.Note, "", Sentence($"since the baseline {string.Join("; ", parts)}"), "");
    }

    private void Light(TrendChange change)
    {
        string light =
            change.LightProbability >= 0.5
                ? Sentence($"as light: {Share(change.Light)} than at the baseline")
                : "The gauges do not move as they would with light: film, resin, temperature or rest may have changed.";
        Say("trend-light", Severity.Note, "", light, "");
        string allowed = change.IsRatherChance
            ? "this interval allows for it"
            : "verdict and these intervals allow for it; dates and pace suppose that it did not";
        if (change.ChanceProbability >= LeastChance)
            Say(
                "trend-chance",
                Severity.Note,
                "",
                Text($"That chance made it look so has a probability of {change.ChanceProbability:0.00}: {allowed}."),
                answer.Verdict == TrendVerdict.Recalibrate
                    ? "The first print of the new calibration tells, as a further coupon would."
                    : "Further coupons tell."
            );
    }

    private void Since(TrendChange change)
    {
        string when = change.DriftProbability switch
        {
            >= 0.6 => $"It has been going on since {When(change.Since.Value)} ({Range(change.Since)})",
            >= 0.4 =>
                $"It began between {When(change.Since.Low)} and {When(change.Since.High)}, whether at once or little by little cannot be told",
            _ => $"It came suddenly, between {When(change.Since.Low)} and {When(change.Since.High)}",
        };
        string pace = change is { DriftProbability: >= 0.6, LightProbability: >= 0.5 }
            ? Text($", by {100 * (Math.Exp(change.PerCoupon.Value) - 1):+0.0;-0.0} % of light a coupon")
            : "";
        string late = TrendPoint.AreWordsAlone(result.Points)
            ? " Words change late: they cannot tell when it set out."
            : "";
        Say("trend-since", Severity.Note, "", $"{when}{pace}.{late}", "");
        if (change.Crosses is { } crosses && answer.Verdict == TrendVerdict.Drifting)
            Say(
                "trend-crosses",
                Severity.Note,
                "",
                double.IsInfinity(crosses.Value)
                    ? "At this pace the tolerance is not left in the foreseeable future."
                    : $"At this pace the tolerance is left {After(crosses.Value)} ({After(crosses.Low)} to {After(crosses.High)}).",
                ""
            );
    }

    private void Correct(TrendChange change)
    {
        if (answer.Correction is not { } c)
        {
            if (change is { LightProbability: >= 0.5, Correction: { Probability: < TrendAnswer.Lands } lost })
                Say(
                    "trend-correct",
                    Severity.Note,
                    "",
                    Text(
                        $"No exposure is offered instead of a new calibration: the best would bring what was read back within its tolerance with {100 * lost.Probability:0} % only ({100 * TrendAnswer.Lands:0} % is asked for)."
                    ),
                    "Further coupons, and a calibration log in which the exposure was changed, make it known better."
                );
            return;
        }
        ExposureSettings now = answer.Log.Current.Entries[^1].Trial.Settings;
        bool alone = result.Points.SelectMany(p => p.Values).Select(v => v.Gauge).Distinct().Count() < 2;
        Say(
            "trend-correct",
            Severity.Note,
            "",
            Text(
                $"Instead of a new calibration: {c.Settings.Time:0.##} s instead of {now.Time:0.##} s brings what was read back within its tolerance with {100 * c.Probability:0} %, rest and edge offset as they are; the light that is gone may ask for {c.Low:0.##} to {c.High:0.##} s."
            )
                + (
                    alone
                        ? " It assumes that light has changed and nothing else: with one gauge the coupons cannot tell light from film, resin or temperature."
                        : " It assumes that light has changed and nothing else, which the gauges together support."
                )
                + (change.DriftProbability >= 0.6 ? " What goes on will take it away again." : ""),
            "Print one coupon at it to confirm."
        );
    }

    private string Moved()
    {
        TrendChange c = result.Change!;
        return c.LightProbability >= 0.5 ? Share(c.Light)
            : c.Growth is { } g
            && AsLight(g, result.Options.LightEffect) >= AsLight(c.PrintThrough, result.Options.PenetrationDepth)
                ? $"growth has moved by {Mm(g)}"
            : $"print-through has moved by {Mm(c.PrintThrough ?? default)}";
    }

    // How much light each would be: what moved alone is named, not what stood still.
    private static double AsLight(Amount? moved, LogNormalPrior effect) => Math.Abs(moved?.Value ?? 0) / effect.Median;

    private string Why() =>
        result.Change is not null ? $"{Moved()} is read, which is no more likely a change than chance."
        : result.Points.Count <= result.Options.Baseline
            ? $"{Count(result.Points.Count)}, and the first {result.Options.Baseline} are the baseline."
        : result.SeemsToMove ? "something seems to move, but it may be chance."
        : result.Charts.Any(c => c.PointSignals || c.EwmaSignals || c.CusumSignals)
            ? $"the {result.Charts.First(c => c.PointSignals || c.EwmaSignals || c.CusumSignals).Name} stands out of its limits, which may be chance."
        : result.WouldBeSeen is null or > Trend.LeastUse
            ? $"{Count(result.Points.Count)} would not even show the loss of half the light."
        : $"{Count(result.Points.Count)} do not yet tell a change from chance.";

    private string More() =>
        result.MoreCoupons switch
        {
            null =>
                "No number of such coupons up to 60 would settle it: read more of each, the bridge or the slot comb first.",
            <= 1 => "One more coupon would settle it.",
            { } n => Text($"{n} more coupons would settle it."),
        };

    // What is computed is a step half way; one at the ends has fewer coupons on one side to stand out from.
    private string WouldBe()
    {
        if (result.WouldBeSeen is not { } share)
            return "";
        string before = result.Points[Math.Max(result.Options.Baseline, result.Points.Count / 2)].Name;
        return Text(
            $"A loss of {100 * share:0} % of the light or more that came at once before {before} would by now have been seen (8 times in 10); one with the first or the last coupons less often."
        );
    }

    // What is nearly sure is said without its probability.
    private static string Within(TrendChange change)
    {
        bool beyond = change.IsRatherBeyond;
        double sure = beyond ? change.Beyond : 1 - change.Beyond;
        string place = beyond ? "out of" : "still within";
        return sure >= 1 - LeastChance
            ? $"{place} the tolerance"
            : Text($"probably {place} the tolerance ({100 * sure:0} %)");
    }

    private void Say(string rule, Severity severity, string subject, string message, string remedy) =>
        findings.Add(new Finding(rule, severity, subject, message.Trim(), remedy));

    private string When(double time) =>
        result.DayOf(time) is { } day
            ? day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
            : result.Points[(int)Math.Clamp(Math.Round(time), 0, result.Points.Count - 1)].Name;

    private string After(double time) =>
        double.IsInfinity(time) ? "far from now"
        : result.DayOf(time) is { } day ? day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
        : Text($"in {Math.Max(0, time - result.Times[^1]):0} coupons");

    private string Range(Amount time) => $"{When(time.Low)} to {When(time.High)}";

    private static string Count(int n) => n == 1 ? "one coupon" : Text($"{n} coupons");

    internal static string Name(TrendSegment segment) =>
        segment.Entries.Count == 1
            ? Text($"print {segment.Entries[0].Number}")
            : Text($"prints {segment.Entries.Min(e => e.Number)} to {segment.Entries.Max(e => e.Number)}");

    private static string Share(Amount light)
    {
        double a = Math.Abs(light.Low),
            b = Math.Abs(light.High);
        string size = Text($"{100 * Math.Abs(light.Value):0} %"),
            way = light.Value < 0 ? "less" : "more";
        return light.Low * light.High < 0
            ? Text($"about {size} {way} light ({100 * a:0} % less to {100 * b:0} % more)")
            : Text($"about {size} ({100 * Math.Min(a, b):0} to {100 * Math.Max(a, b):0} %) {way} light");
    }

    private static string Mm(Amount a) =>
        Text($"{Even(a.Value):+0.000;-0.000} mm ({Even(a.Low):+0.000;-0.000} to {Even(a.High):+0.000;-0.000})");

    // What rounds to zero has no sign.
    private static double Even(double mm) => Math.Round(mm, 3) + 0.0;

    private static string Sentence(string text) => char.ToUpperInvariant(text[0]) + text[1..] + ".";

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
