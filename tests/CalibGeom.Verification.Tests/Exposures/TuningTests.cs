using CalibGeom.Verification.Exposures;
using CalibGeom.Verification.Readings;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.Exposures;

public class TuningTests
{
    private static readonly TuneOptions Sharp = TuneOptions.Default with
    {
        Priors = ExposurePriors.Default with { BetweenPrints = 0.0005, LackOfFit = 0.0005 },
        RestDoubt = 0.5,
        LightMargin = 0.5,
    };

    [Property(MaxTest = 40)]
    public Property NoStepLeavesItsBounds() => Prop.ForAll(RandomTrials(), trials =>
    {
        TuneOptions o = TuneOptions.Default;
        ExposureSettings last = trials[^1].Settings, to = Tuning.Next(trials, o).Settings;
        double ratio = to.Time / last.Time;
        bool time = ratio == 1 || (Math.Abs(ratio - 1) >= o.LeastStep - 1e-9 && ratio <= 1 + o.MostUp + 1e-9 && ratio >= 1 - o.MostDown - 1e-9);
        return time && to.Rest >= 0 && to.Rest - last.Rest <= o.MostRestStep + 1e-9 && to.Rest <= Math.Max(last.Rest, o.MostRest);
    });

    [Fact]
    public void LooseByThreeTenthsOfASecondIsUnderExposedThoughEveryColumnStands()
    {
        // Common practice, no source.
        TuningResult result = Tuning.Advise([Loose(0.3) with { Columns = Make.Columns(0) }], Sharp);
        Finding told = result.Findings.Single(f => f.Rule == "loose");
        Assert.StartsWith("Under-exposed by about 0.3 s although every column stands", told.Message, StringComparison.Ordinal);
        Assert.True(result.Next.Settings.Time > 2);
    }

    [Theory]
    [InlineData(0.4, 0.5, 7, "loose", "boxes are loose and columns are missing", "room for more light")]
    [InlineData(0.4, 0.5, 2, "loose", "boxes are loose and columns are missing", "low slots are closed")]
    [InlineData(0.4, 0, 7, "loose", "although every column stands", "room for more light")]
    [InlineData(0.4, -1, -1, "loose", "looser than wanted", "")]
    [InlineData(-0.4, 0.5, 7, "tight", "tight and columns are missing", "growth is sideways")]
    [InlineData(-0.4, 0, 2, "tight", "tight and every column stands", "too much light")]
    [InlineData(-0.4, -1, -1, "tight", "tighter than wanted", "")]
    [InlineData(0, 0.5, 7, "on-target", "on target but columns are missing", "slots are open")]
    [InlineData(0, 0, 2, "on-target", "on target and every column stands", "print-through")]
    [InlineData(0, -1, -1, "on-target", "on target", "")]
    public void EveryCaseHasItsWords(double seconds, double limit, int open, string rule, string main, string slots)
    {
        Trial trial = Loose(seconds);
        if (limit >= 0) trial = trial with { Columns = Make.Columns(limit) };
        if (open >= 0) trial = trial with { Slots = Make.Slots(open) };
        Finding told = Tuning.Advise([trial], Sharp).Findings.Single(f => f.Rule is "loose" or "tight" or "on-target");
        Assert.Equal(rule, told.Rule);
        Assert.Contains(main, told.Message, StringComparison.Ordinal);
        Assert.Contains(slots, told.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void AxesThatDifferArePixels()
    {
        Finding told = Tuning.Advise([Make.Trial(2, 0, 0, 0.001, 0.012)]).Findings.Single(f => f.Rule == "axes-differ");
        Assert.Contains("along X than along Y: that is pixels, not exposure", told.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Tuning.Advise([Make.Trial(2, 0, 0, 0.001, 0.001)]).Findings, f => f.Rule == "axes-differ");
    }

    [Fact]
    public void TrialsThatNeverSettleNameTheCommonCauses()
    {
        double[] growths = [0.03, -0.05, 0.06, -0.06, 0.05];
        TuningResult result = Tuning.Advise(growths.Select((g, i) => Make.Trial(2 + 0.2 * i, 0.5 * i, g)).ToArray());
        foreach (string word in new[] { "temperature", "film", "screen", "Z axis", "resin" })
            Assert.Contains(word, result.Findings.Single(f => f.Rule == "lack-of-fit").Remedy, StringComparison.Ordinal);
        Assert.Contains(result.Findings, f => f.Rule == "not-converging");
    }

    [Fact]
    public void OnTargetIsConfirmedBeforeItIsBelieved()
    {
        Trial good = OnTarget();
        TuningResult once = Tuning.Advise([good], Sharp), twice = Tuning.Advise([good, good], Sharp);
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
            GrowthX = new GrowthReading(0, 0.004, 0.03), GrowthY = new GrowthReading(0, 0.004, 0.03), Joints = [new JointOutcome("joint1", 0.05)],
        };
        TuneOptions options = TuneOptions.Default with { LightMargin = 0.5, Priors = ExposurePriors.Default with { GrowthMean = 0.006 } };
        TuningResult result = Tuning.Advise([vague, vague], options);
        Assert.Equal(NextKind.NothingVisible, result.Next.Kind);
        Assert.Contains("No change your caliper can see", result.Findings[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void OtherConditionsAreKeptApartAndSaid()
    {
        Trial fine = new(new ExposureSettings(1.3), Make.Conditions(0.03)) { GrowthX = new GrowthReading(0.5, 0.001) };
        TuningResult with = Tuning.Advise([fine, Make.Trial(2, 0, 0.01)]), without = Tuning.Advise([Make.Trial(2, 0, 0.01)]);
        Assert.Single(with.Trials);
        Assert.Contains("layer 0.03 mm instead of 0.05 mm", with.KeptApart.Single().Why, StringComparison.Ordinal);
        Assert.Contains(with.Findings, f => f.Rule == "kept-apart");
        Assert.Equal(without.Next, with.Next);
    }

    [Fact]
    public void EveryConditionKeepsApart()
    {
        var reference = new TrialConditions(0.05, "a", "b", temperatureStart: 23, temperatureEnd: 25);
        TrialConditions[] others =
        [
            new(0.03, "a", "b"), new(0.05, "c", "b"), new(0.05, "a", "c"), new(0.05, "a", "b", PartState.Washed), new(0.05, "a", "b", greyLevels: true),
            new(0.05, "a", "b", orientation: 90), new(0.05, "a", "b", temperatureStart: 27),
        ];
        Assert.All(others, o => Assert.Single(o.DifferencesFrom(reference)));
        Assert.Empty(new TrialConditions(0.05, "a", "b", temperatureStart: 22.5).DifferencesFrom(reference));
    }

    [Fact]
    public void TheCurveHoldsTheTargetAndPricesProduction()
    {
        TuningResult result = Tuning.Advise([Loose(0.4) with { Columns = Make.Columns(0.4), Slots = Make.Slots(6) }], Sharp);
        Assert.Equal(25, result.Curve.Count);
        Assert.All(result.Curve.Zip(result.Curve.Skip(1)), p => Assert.True(p.Second.Time > p.First.Time && p.Second.PrintTime > p.First.PrintTime && p.Second.Columns!.Value.Diameter < p.First.Columns!.Value.Diameter));
        CurvePoint point = result.Curve[4];
        Assert.InRange(point.Time, point.Low, point.High);
        // 5 base layers of 25 s, 1195 layers to 60 mm, each with 1 s of rest and 7 s of lift.
        Assert.Equal(5 * (25 + 1 + 7) + 1195 * (point.Time + 1 + 7), point.PrintTime, 1e-6);
    }

    [Fact]
    public void ATargetMovesEveryJointAlike()
    {
        TuningResult result = Tuning.Advise([Make.Trial(2, 0, 0)], TuneOptions.Default with { Target = 0.08 });
        Assert.Equal(-0.015, result.TargetGrowth, 1e-12);
        Assert.All(result.Chances, c => Assert.Equal(0.08, c.Target, 1e-12));
    }

    [Fact]
    public void NothingToLearnFromAndBadOptionsAreRefused()
    {
        Assert.Throws<ArgumentException>(() => Tuning.Advise([]));
        Assert.Throws<ArgumentException>(() => Tuning.Advise([OnTarget()], TuneOptions.Default with { Tolerance = 0 }));
        Assert.Throws<ArgumentException>(() => Tuning.Advise([OnTarget()], TuneOptions.Default with { Target = 9 }));
        Assert.Throws<ArgumentException>(() => Tuning.Advise([OnTarget()], TuneOptions.Default with { Probability = double.NaN }));
    }

    /// <summary>A print at 2 s that lies a number of seconds below the exposure that would be on target, by the prior's slope.</summary>
    private static Trial Loose(double seconds) => Make.Trial(2, 6, -0.018 * Math.Log((2 + seconds) / 2), 0.0005);

    private static Trial OnTarget() => Make.Trial(2, 6, 0.0005, 0.0005);

    private static Arbitrary<Trial[]> RandomTrials() =>
        (from n in Gen.Choose(1, 4)
         from steps in Gen.Choose(-100, 100).ArrayOf(3 * n)
         select Enumerable.Range(0, n).Select(i => Make.Trial(
             2 * Math.Exp(steps[3 * i] / 100.0), 3 + steps[3 * i + 1] / 33.4, steps[3 * i + 2] / 1500.0)).ToArray()).ToArbitrary();
}
