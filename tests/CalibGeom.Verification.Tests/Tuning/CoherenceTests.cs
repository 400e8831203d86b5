using System.Globalization;
using System.Text.RegularExpressions;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tests.Tuning.League;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Tuning.Policy;
using CalibGeom.Verification.Uncertainty;
using Xunit.Abstractions;
using Held = CalibGeom.Verification.Tuning.Policy.Held;

namespace CalibGeom.Verification.Tests.Tuning;

/// <summary>
/// Answers to logs of hidden printers and of numbers at random: the sentences of one answer never contradict each
/// other.
/// </summary>
public class CoherenceTests(ITestOutputHelper output)
{
    private const int Answers = 2000,
        FirstSeed = 30000;
    private static readonly string[] Orders = ["Print ", "Expose", "expose longer", "rest longer", "Stop"];

    [Fact]
    public void NoAnswerContradictsItself()
    {
        int answers = 0,
            sessions = 0,
            alarmed = 0;
        for (int i = 0; answers < Answers * 3 / 5; i++)
        {
            var printer = new LeaguePrinter(LeagueRow.All[i % LeagueRow.All.Count], (ulong)(FirstSeed + i));
            bool alarm = false;
            foreach (TuningResult result in Session(printer))
            {
                Check(result);
                alarm |= result.Findings.Any(f => f.Rule is "repeat-differs" or "light-changed" or "nothing-printed");
                answers++;
            }
            sessions++;
            alarmed += alarm ? 1 : 0;
        }
        output.WriteLine($"{answers} answers of {sessions} printers, {alarmed} of them blamed");
        Assert.True(alarmed <= 0.02 * sessions, $"{alarmed} of {sessions} faultless printers were blamed");
        var random = new SeededRandom(FirstSeed);
        for (int i = 0; i < Answers * 2 / 5; i++)
            Check(Tuner.Run(Chaos(random)));
    }

    [Fact]
    public void NoAnswerContradictsItselfWhateverIsHeld()
    {
        TuneOptions[] asked =
        [
            new() { OffsetAllowed = false },
            new() { Hold = Held.Offset },
            new() { Hold = Held.Time },
            new() { Hold = Held.Rest },
        ];
        for (int i = 0; i < 60; i++)
        {
            var printer = new LeaguePrinter(LeagueRow.All[i % LeagueRow.All.Count], (ulong)(FirstSeed + i));
            foreach (TuningResult result in Session(printer))
                Check(Tuner.Run(result.Trials, asked[i % asked.Length]));
        }
    }

    /// <summary>The same print over and over, far off, ends with an offset that was not printed.</summary>
    [Fact]
    public void AnOffsetThatIsOrderedAtTheEndIsSaidToTakeUpWhatIsLeft()
    {
        Trial print = Make.Trial(2.5, 1, 0.02) with { Columns = Make.Columns(0), Slots = Make.Slots(6) };
        TuningResult result = Tuner.Run([.. Enumerable.Repeat(print, 16)]);
        Assert.Equal(NextKind.Stop, result.Next.Kind);
        Assert.NotEqual(print.Settings, result.Next.Settings);
        Check(result);
        Assert.Equal("The edge offset takes that up.", result.Findings[1].Remedy);
    }

    [Fact]
    public void CouponsOfOnePlateAreOnePrint()
    {
        Trial print = Make.Trial(2.5, 1, 0) with
        {
            Columns = Make.Columns(0),
            Slots = Make.Slots(6),
            Date = new DateOnly(2026, 1, 10),
        };
        Trial[] Coupons(bool plate) =>
            [
                .. Enumerable
                    .Range(0, 3)
                    .Select(i => plate ? print with { Place = new PlateSpot($"A{i + 1}", 20 * i, 0, 0) } : print),
            ];
        Assert.Equal(NextKind.Stop, Tuner.Run(Coupons(false)).Next.Kind);
        TuningResult one = Tuner.Run(Coupons(true));
        Assert.Equal(NextKind.Confirm, one.Next.Kind);
        Assert.StartsWith("One print with this exposure", one.Findings[0].Remedy, StringComparison.Ordinal);
    }

    private static IEnumerable<TuningResult> Session(LeaguePrinter printer)
    {
        var trials = new List<Trial> { printer.Print(printer.Start) };
        while (true)
        {
            TuningResult result = Tuner.Run(trials, printer.Options);
            yield return result;
            if (result.Next.Kind == NextKind.Stop || trials.Count == 5)
                yield break;
            trials.Add(printer.Print(result.Next.Settings));
        }
    }

    private static Trial[] Chaos(SeededRandom random) =>
        [
            .. Enumerable
                .Range(0, 1 + (int)random.Uniform(0, 3))
                .Select(_ =>
                    Make.Trial(
                        Math.Round(random.Uniform(0.5, 8), 2),
                        Math.Round(random.Uniform(0, 6), 1),
                        random.Uniform(-0.15, 0.15),
                        difference: random.Uniform(-0.02, 0.02),
                        offset: Math.Round(random.Uniform(-0.1, 0.1), 3)
                    ) with
                    {
                        Joints = random.Uniform() < 0.8 ? [new JointOutcome("joint1", 0.05, Word(random))] : [],
                        Columns = random.Uniform() < 0.5 ? [] : Make.Columns(random.Uniform(0, 1)),
                        Slots = random.Uniform() < 0.5 ? null : Make.Slots((int)random.Uniform(0, 9)),
                    }
                ),
        ];

    private static FeltFit? Word(SeededRandom random) =>
        random.Uniform() < 0.5 ? null : (FeltFit)(int)random.Uniform(0, 4);

    private static void Check(TuningResult result)
    {
        IReadOnlyList<Finding> told = result.Findings;
        ExposureSettings last = result.Trials[^1].Settings,
            to = result.Next.Settings;
        // One order, first; nothing after it orders.
        Assert.Equal("next", told[0].Rule);
        foreach (Finding other in told.Skip(1))
            Assert.DoesNotContain(Orders, o => $"{other.Message} {other.Remedy}".Contains(o, StringComparison.Ordinal));
        // One verdict, and the one of the numbers.
        string verdict = Assert
            .Single(told, f => f.Rule is "on-target" or "tight" or "loose" or "not-told-yet" or "fit-not-known")
            .Rule;
        double most = new[] { result.Chances.OnTarget, result.Chances.Tight, result.Chances.Loose }.Max();
        Assert.Equal(
            verdict is "on-target" or "tight" or "loose",
            result.Verdict != Verdict.NotKnown && most >= result.Options.Probability
        );
        // Order and numbers agree.
        Assert.Contains(Text(to), told[0].Message, StringComparison.Ordinal);
        Assert.Equal(Text(to), Text(result.ToType.Settings));
        switch (result.Next.Kind)
        {
            case NextKind.Change:
                Assert.NotEqual(last, to);
                break;
            case NextKind.Confirm:
                Assert.Equal(last, to);
                break;
            default:
                Assert.True(to.SameProcess(last));
                Assert.True(result.Trials.Count(t => t.Settings.SameProcess(last)) >= 2);
                // A final answer carries no warning about what it settles.
                Assert.DoesNotContain(
                    told,
                    f => f.Severity == Severity.Warning && f.Rule is "tight" or "loose" or "column-limit"
                );
                break;
        }
        // An order that goes the other way than the verdict says so.
        if (
            (verdict == "tight" && to.Time > last.Time)
            || (verdict == "loose" && to.Time < last.Time)
            || (verdict == "on-target" && to.Time != last.Time)
        )
            Assert.NotEqual("", told[1].Remedy);
        Agree(told, last, to);
        // Opposite words about one thing are never said together.
        foreach ((string one, string other) in new[] { ("too small", "too large"), ("too much", "too little") })
            Assert.False(
                told.Any(f => f.Rule != "scale" && f.Message.Contains(one, StringComparison.Ordinal))
                    && told.Any(f => f.Rule != "scale" && f.Message.Contains(other, StringComparison.Ordinal))
            );
        if (result.Trials[^1].Joints.Count == 0)
            Assert.DoesNotContain(
                told,
                f => $"{f.Message} {f.Remedy}".Contains(" box", StringComparison.OrdinalIgnoreCase)
            );
        // Every setting is complete.
        Assert.All(result.ToType.Lines, l => Assert.NotEqual("", l.Value));
        Assert.Equal(
            [
                "exposure",
                "rest before exposure",
                "  counted from light-off",
                "edge offset",
                "base layers",
                "must be off",
            ],
            result.ToType.Lines.Select(l => l.Key).Where(k => !k.StartsWith("scale", StringComparison.Ordinal))
        );
    }

    // What is said to move is what the order moves.
    private static void Agree(IReadOnlyList<Finding> told, ExposureSettings last, ExposureSettings to)
    {
        string order = told[0].Remedy,
            verdict = told[1].Remedy;
        if (to.EdgeOffset == 0 || to.EdgeOffset == last.EdgeOffset)
            Assert.DoesNotMatch(
                "([Tt]he|and) edge offset (open|close|hold|take)|offset opens|offset closes",
                order + verdict
            );
        if (verdict.Contains("where they may go", StringComparison.Ordinal))
            Assert.Equal(last, to);
        if (told[1].Rule != "tight")
            Assert.DoesNotContain("stays tight", order, StringComparison.Ordinal);
        if (order.Contains("exposure trims it", StringComparison.Ordinal))
            Assert.DoesNotMatch("not for the fit|strength comes first|tunnels", verdict);
        if (order.Contains("step by step", StringComparison.Ordinal))
            Assert.DoesNotContain("then takes", order, StringComparison.Ordinal);
        if (Regex.Match(told[1].Message, @"about ([\d.]+) s of light too (much|little)") is { Success: true } light)
            Assert.InRange(
                double.Parse(light.Groups[1].Value, CultureInfo.InvariantCulture),
                0,
                (light.Groups[2].Value == "much" ? 2.0 / 3 : 2) * last.Time + 0.051
            );
    }

    private static string Text(ExposureSettings s) =>
        FormattableString.Invariant($"{s.Time:0.###} s exposure, {s.Rest:0.###} s rest, ")
        + (
            s.EdgeOffset == 0
                ? "no edge offset"
                : FormattableString.Invariant($"edge offset {s.EdgeOffset:+0.000;-0.000} mm")
        );
}
