using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.Tuning;

public class TuningTests
{
    private static readonly TuneOptions Sharp = TuneOptions.Default with
    {
        Priors = ExposurePriors.Default with { BetweenPrints = 0.0005, LackOfFit = 0.0005 },
        RestDoubt = 0.5,
        LightMargin = 0.5,
    };

    [Property(MaxTest = 40)]
    public Property NoStepLeavesItsBounds() =>
        Prop.ForAll(
            RandomTrials(),
            trials =>
            {
                TuneOptions o = TuneOptions.Default;
                ExposureSettings last = trials[^1].Settings,
                    to = Tuner.Next(trials, o).Settings;
                double ratio = to.Time / last.Time;
                bool time =
                    ratio == 1
                    || (
                        Math.Abs(ratio - 1) >= o.LeastStep - 1e-9
                        && ratio <= 1 + o.MostUp + 1e-9
                        && ratio >= 1 - o.MostDown - 1e-9
                    );
                return time
                    && to.Rest >= 0
                    && to.Rest - last.Rest <= o.MostRestStep + 1e-9
                    && to.Rest <= Math.Max(last.Rest, o.MostRest);
            }
        );

    [Fact]
    public void LooseByThreeTenthsOfASecondIsUnderExposedThoughEveryColumnStands()
    {
        // Common practice, no source.
        TuningResult result = Tuner.Advise([Loose(0.3) with { Columns = Make.Columns(0) }], Sharp);
        Finding told = result.Findings.Single(f => f.Rule == "loose");
        Assert.StartsWith(
            "Under-exposed by about 0.3 s although every column stands",
            told.Message,
            StringComparison.Ordinal
        );
        Assert.True(result.Next.Settings.Time > 2);
    }

    /// <summary>
    /// Loose or tight by 0.4 s or on target; columns missing, all standing or not counted (-1); low slots closed, open
    /// or not counted (-1).
    /// </summary>
    [Theory]
    [InlineData(
        0.4,
        0.5,
        7,
        "Under-exposed by about 0.4 s: the boxes are loose, columns are missing and the slots from 0.2 mm on are open.",
        "More exposure closes the gaps and saves columns"
    )]
    [InlineData(
        0.4,
        0.5,
        2,
        "The boxes are loose and columns are missing although low slots are closed",
        "edge offset that is too negative"
    )]
    [InlineData(0.4, 0.5, -1, "the boxes are loose and columns are missing.", "saves columns")]
    [InlineData(
        0.4,
        0,
        7,
        "Under-exposed by about 0.4 s although every column stands: the boxes are loose and the slots from 0.2 "
            + "mm on are open.",
        "room for more"
    )]
    [InlineData(0.4, 0, 2, "it is not light that is missing", "shrinkage")]
    [InlineData(0.4, 0, -1, "although every column stands: the boxes are loose.", "do not mean enough light")]
    [InlineData(0.4, -1, 7, "looser than wanted and the slots from 0.2 mm on are open", "room for more light")]
    [InlineData(0.4, -1, 2, "looser than wanted although low slots are closed", "shrinkage")]
    [InlineData(0.4, -1, -1, "Under-exposed by about 0.4 s: the boxes are looser than wanted.", "")]
    [InlineData(
        -0.4,
        0.5,
        7,
        "tight and columns are missing while the slots from 0.2 mm on are open: growth is sideways",
        "about 0.4 s less exposure would do, and cost more columns. Rest longer first"
    )]
    [InlineData(-0.4, 0.5, 2, "more light would not save them", "peeling or adhesion")]
    [InlineData(-0.4, 0.5, -1, "The boxes are tight and columns are missing.", "Rest longer first")]
    [InlineData(
        -0.4,
        0,
        7,
        "tight while every column stands and the slots from 0.2 mm on are open: growth is sideways",
        "cost no columns"
    )]
    [InlineData(
        -0.4,
        0,
        2,
        "Over-exposed by about 0.4 s: the boxes are tight, every column stands and low slots are closed.",
        "too much light"
    )]
    [InlineData(-0.4, 0, -1, "Over-exposed by about 0.4 s: the boxes are tight and every column stands.", "")]
    [InlineData(
        -0.4,
        -1,
        7,
        "tighter than wanted while the slots from 0.2 mm on are open: growth is sideways",
        "negative edge offset"
    )]
    [InlineData(-0.4, -1, 2, "tighter than wanted and low slots are closed", "too much light")]
    [InlineData(-0.4, -1, -1, "Over-exposed by about 0.4 s: the boxes are tighter than wanted.", "")]
    [InlineData(
        0,
        0.5,
        7,
        "on target and the slots from 0.2 mm on are open, but columns are missing",
        "More rest makes room"
    )]
    [InlineData(0, 0.5, 2, "although low slots are closed: more light would not save them", "peeling or adhesion")]
    [InlineData(0, 0.5, -1, "on target but columns are missing.", "More rest makes room")]
    [InlineData(0, 0, 7, "on target, every column stands and the slots from 0.2 mm on are open", "")]
    [InlineData(
        0,
        0,
        2,
        "on target and every column stands, but print-through closes low slots",
        "positive edge offset opens them"
    )]
    [InlineData(0, 0, -1, "on target and every column stands.", "")]
    [InlineData(0, -1, 7, "on target and the slots from 0.2 mm on are open.", "")]
    [InlineData(0, -1, 2, "on target, but print-through closes low slots", "positive edge offset")]
    [InlineData(0, -1, -1, "The clearance is on target.", "")]
    public void EveryCaseHasItsWords(double seconds, double limit, int open, string main, string remedy)
    {
        Finding told = Told(seconds, limit, open);
        Assert.Equal(
            seconds > 0 ? "loose"
                : seconds < 0 ? "tight"
                : "on-target",
            told.Rule
        );
        Assert.Contains(main, told.Message, StringComparison.Ordinal);
        Assert.Contains(remedy, told.Remedy, StringComparison.Ordinal);
        Assert.Equal(seconds != 0 || limit > 0 || open == 2, told.Severity == Severity.Warning);
    }

    [Fact]
    public void NoTwoCasesShareTheirSentence()
    {
        string[] all = (
            from seconds in new[] { 0.4, -0.4, 0 }
            from limit in new[] { 0.5, 0, -1 }
            from open in new[] { 7, 2, -1 }
            select Told(seconds, limit, open).Message
        ).ToArray();
        Assert.Equal(27, all.Distinct().Count());
    }

    [Theory]
    [InlineData(-0.02, "loose")]
    [InlineData(0.02, "tight")]
    public void AnEdgeOffsetIsNotTakenForExposure(double offset, string word)
    {
        TuningResult result = Tuner.Advise(
            [Make.Trial(2, 6, offset, 0.0005, offset: offset) with { Columns = Make.Columns(0.5) }],
            Sharp
        );
        Finding told = result.Findings.Single(f => f.Rule == word);
        Assert.StartsWith(
            $"The boxes are {word} because of the edge offset of",
            told.Message,
            StringComparison.Ordinal
        );
        Assert.Contains("Columns are missing: more rest", told.Remedy, StringComparison.Ordinal);
        Assert.Equal((2, 0), (result.Next.Settings.Time, result.Next.Settings.EdgeOffset));
    }

    [Fact]
    public void ClosedSlotsKeepExposureWhereItIs()
    {
        // Loose, but low slots are closed: light is not what is missing, so the edge offset closes the gap.
        TuningResult result = Tuner.Advise([Loose(0.6) with { Slots = Make.Slots(2) }], Sharp);
        Assert.Equal(2, result.Next.Settings.Time);
        Assert.True(result.Next.Settings.EdgeOffset > 0);
        Assert.True(Tuner.Advise([Loose(0.6) with { Slots = Make.Slots(7) }], Sharp).Next.Settings.Time > 2);
        Assert.Contains(result.Findings, f => f.Rule == "edge-offset");
    }

    private static Finding Told(double seconds, double limit, int open)
    {
        Trial trial = Loose(seconds);
        if (limit >= 0)
            trial = trial with { Columns = Make.Columns(limit) };
        if (open >= 0)
            trial = trial with { Slots = Make.Slots(open) };
        return Tuner.Advise([trial], Sharp).Findings.Single(f => f.Rule is "loose" or "tight" or "on-target");
    }

    [Fact]
    public void AxesThatDifferArePixels()
    {
        Finding told = Tuner.Advise([Make.Trial(2, 0, 0, 0.001, 0.012)]).Findings.Single(f => f.Rule == "axes-differ");
        Assert.Contains("along X than along Y: that is pixels, not exposure", told.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Tuner.Advise([Make.Trial(2, 0, 0, 0.001, 0.001)]).Findings, f => f.Rule == "axes-differ");
    }

    [Fact]
    public void TrialsThatNeverSettleNameTheCommonCauses()
    {
        double[] growths = [0.03, -0.05, 0.06, -0.06, 0.05];
        TuningResult result = Tuner.Advise(growths.Select((g, i) => Make.Trial(2 + 0.2 * i, 0.5 * i, g)).ToArray());
        foreach (string word in new[] { "temperature", "film", "screen", "Z axis", "resin" })
            Assert.Contains(
                word,
                result.Findings.Single(f => f.Rule == "lack-of-fit").Remedy,
                StringComparison.Ordinal
            );
        Assert.Contains(result.Findings, f => f.Rule == "not-converging");
    }

    [Fact]
    public void WhatTheFormulaMissesIsSaid()
    {
        var sharp = ExposurePriors.Default with { BetweenPrints = 1e-4, LackOfFit = 1e-4 };
        Trial[] curved = new[] { 1, 1.5, 2, 3, 4.5 }
            .Select(t => Make.Trial(t, 0, 0.02 + 0.018 * Math.Log(t / 2) - 0.01 * Math.Pow(Math.Log(t / 2), 2), 1e-4))
            .ToArray();
        Assert.Contains(
            Tuner.Advise(curved, TuneOptions.Default with { Priors = sharp }).Findings,
            f => f.Rule == "curved" && f.Message.Contains("trust small steps", StringComparison.Ordinal)
        );
        // Twice the exposure, but more slots open than before: the light was not what the time says.
        Trial dim = Make.Trial(4, 0, 0.02) with
        {
            Slots = Make.Slots(8),
        };
        Finding light = Tuner
            .Advise([Make.Trial(2, 0, 0.02) with { Slots = Make.Slots(3) }, dim])
            .Findings.Single(f => f.Rule == "light-changed");
        Assert.Contains("lamp, screen", light.Remedy, StringComparison.Ordinal);
        Trial warming = new(
            new ExposureSettings(2),
            new TrialConditions(0.05, temperatureStart: 20, temperatureEnd: 26)
        )
        {
            GrowthX = new GrowthReading(0, 0.002),
        };
        Assert.Contains(
            Tuner.Advise([warming]).Findings,
            f => f.Rule == "temperature" && f.Message.Contains("from 20 to 26 degrees C", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void RestThatHarmsColumnsIsSaid()
    {
        Trial At(double time, double rest, double limit) =>
            Make.Trial(time, rest, 0) with
            {
                Columns = [.. Make.Columns(limit), .. Make.Columns(limit * 1.1)],
            };
        TuningResult harmed = Tuner.Advise([At(2, 0, 0.34), At(2.4, 0, 0.32), At(2, 3, 0.55), At(2.4, 3, 0.5)]),
            same = Tuner.Advise([At(2, 0, 0.4), At(2.4, 0, 0.38), At(2, 3, 0.4), At(2.4, 3, 0.38)]);
        Assert.Contains(
            harmed.Findings,
            f => f.Rule == "rest-and-columns" && f.Message.Contains("harms", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(same.Findings, f => f.Rule == "rest-and-columns");
    }

    [Fact]
    public void WhereRestIsNoLongerWorthItsTimeIsSaid()
    {
        string Told(double rest) =>
            Tuner.Advise([Make.Trial(2, rest, 0)]).Findings.Single(f => f.Rule == "rest").Message;
        Assert.Contains("resting is worth its time up to", Told(0), StringComparison.Ordinal);
        Assert.Contains("not worth its time", Told(6), StringComparison.Ordinal);
    }

    [Fact]
    public void OnTargetIsConfirmedBeforeItIsBelieved()
    {
        Trial good = OnTarget();
        TuningResult once = Tuner.Advise([good], Sharp),
            twice = Tuner.Advise([good, good], Sharp);
        Assert.Equal(NextKind.Confirm, once.Next.Kind);
        Assert.Equal(good.Settings, once.Next.Settings);
        Assert.All(once.Chances, c => Assert.True(c.OnTarget >= 0.8));
        Assert.Equal(4, once.Chances.Count);
        Assert.Equal(NextKind.Stop, twice.Next.Kind);
        Assert.Contains("Stop", twice.Findings[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatTheCaliperCannotSeeIsLeftAlone()
    {
        Trial vague = new(new ExposureSettings(2, 6), Make.Conditions())
        {
            GrowthX = new GrowthReading(0, 0.004, 0.03),
            GrowthY = new GrowthReading(0, 0.004, 0.03),
            Joints = [new JointOutcome("joint1", 0.05)],
        };
        TuneOptions options = TuneOptions.Default with
        {
            LightMargin = 0.5,
            Priors = ExposurePriors.Default with { GrowthMean = 0.006 },
        };
        TuningResult result = Tuner.Advise([vague, vague], options);
        Assert.Equal(NextKind.NothingVisible, result.Next.Kind);
        Assert.Contains("No change your caliper can see", result.Findings[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void OtherConditionsAreKeptApartAndSaid()
    {
        Trial fine = new(new ExposureSettings(1.3), Make.Conditions(0.03)) { GrowthX = new GrowthReading(0.5, 0.001) };
        TuningResult with = Tuner.Advise([fine, Make.Trial(2, 0, 0.01)]),
            without = Tuner.Advise([Make.Trial(2, 0, 0.01)]);
        Assert.Single(with.Trials);
        Assert.Contains("layer 0.03 mm instead of 0.05 mm", with.KeptApart.Single().Why, StringComparison.Ordinal);
        Assert.Contains(
            with.Findings,
            f =>
                f.Rule == "kept-apart"
                && f.Message.StartsWith("Trial 1 (1.3 s exposure, 0 s rest) was kept apart", StringComparison.Ordinal)
        );
        Assert.StartsWith(
            "Trials 1, 2 were kept apart",
            Tuner.Advise([fine, fine, Make.Trial(2, 0, 0.01)]).Findings.Single(f => f.Rule == "kept-apart").Message,
            StringComparison.Ordinal
        );
        Assert.Equal(without.Next, with.Next);
    }

    [Fact]
    public void EveryConditionKeepsApart()
    {
        var reference = new TrialConditions(0.05, "a", "b", temperatureStart: 23, temperatureEnd: 25);
        TrialConditions[] others =
        [
            new(0.03, "a", "b"),
            new(0.05, "c", "b"),
            new(0.05, "a", "c"),
            new(0.05, "a", "b", PartState.Washed),
            new(0.05, "a", "b", greyLevels: true),
            new(0.05, "a", "b", orientation: 90),
            new(0.05, "a", "b", temperatureStart: 27),
        ];
        Assert.All(others, o => Assert.Single(o.DifferencesFrom(reference)));
        Assert.Empty(new TrialConditions(0.05, "a", "b", temperatureStart: 22.5).DifferencesFrom(reference));
    }

    [Fact]
    public void TheCurveHoldsTheTargetAndPricesProduction()
    {
        TuningResult result = Tuner.Advise(
            [Loose(0.4) with { Columns = Make.Columns(0.4), Slots = Make.Slots(6) }],
            Sharp
        );
        Assert.Equal(25, result.Curve.Count);
        Assert.All(
            result.Curve.Zip(result.Curve.Skip(1)),
            p =>
                Assert.True(
                    p.Second.Time > p.First.Time
                        && p.Second.PrintTime > p.First.PrintTime
                        && p.Second.Columns!.Value.Diameter < p.First.Columns!.Value.Diameter
                )
        );
        CurvePoint point = result.Curve[4];
        Assert.InRange(point.Time, point.Low, point.High);
        // 5 base layers of 25 s, 1195 layers to 60 mm, each with 1 s of rest and 7 s of lift.
        Assert.Equal(5 * (25 + 1 + 7) + 1195 * (point.Time + 1 + 7), point.PrintTime, 1e-6);
    }

    [Fact]
    public void ATargetMovesEveryJointAlike()
    {
        TuningResult result = Tuner.Advise([Make.Trial(2, 0, 0)], TuneOptions.Default with { Target = 0.08 });
        Assert.Equal(-0.015, result.TargetGrowth, 1e-12);
        Assert.All(result.Chances, c => Assert.Equal(0.08, c.Target, 1e-12));
    }

    [Fact]
    public void NothingToLearnFromAndBadOptionsAreRefused()
    {
        Assert.Throws<ArgumentException>(() => Tuner.Advise([]));
        Assert.Throws<ArgumentException>(() => Tuner.Advise([OnTarget()], TuneOptions.Default with { Tolerance = 0 }));
        Assert.Throws<ArgumentException>(() => Tuner.Advise([OnTarget()], TuneOptions.Default with { Target = 9 }));
        Assert.Throws<ArgumentException>(() =>
            Tuner.Advise([OnTarget()], TuneOptions.Default with { Probability = double.NaN })
        );
    }

    /// <summary>
    /// A print at 2 s that lies a number of seconds below the exposure that would be on target, by the prior's slope.
    /// </summary>
    private static Trial Loose(double seconds) => Make.Trial(2, 6, -0.018 * Math.Log((2 + seconds) / 2), 0.0005);

    private static Trial OnTarget() => Make.Trial(2, 6, 0.0005, 0.0005);

    private static Arbitrary<Trial[]> RandomTrials() =>
        (
            from n in Gen.Choose(1, 4)
            from steps in Gen.Choose(-100, 100).ArrayOf(3 * n)
            select Enumerable
                .Range(0, n)
                .Select(i =>
                    Make.Trial(
                        2 * Math.Exp(steps[3 * i] / 100.0),
                        3 + steps[3 * i + 1] / 33.4,
                        steps[3 * i + 2] / 1500.0
                    )
                )
                .ToArray()
        ).ToArbitrary();
}
