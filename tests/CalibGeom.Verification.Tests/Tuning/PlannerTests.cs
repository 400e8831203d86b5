using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Tuning.Policy;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.Tuning;

/// <summary>Light, rest, offset, in that order, within their bounds.</summary>
public class PlannerTests
{
    private static readonly TuneOptions Plain = TuneOptions.Default;

    [Property(MaxTest = 25)]
    public Property NoStepLeavesItsBounds() =>
        Prop.ForAll(
            RandomTrials(),
            trials =>
            {
                ExposureSettings last = trials[^1].Settings,
                    to = Tuner.Next(trials, Plain).Settings;
                double ratio = to.Time / last.Time;
                return ratio <= 1 + Plain.MostUp + 1e-9
                    && ratio >= 1 - Plain.MostDown - 1e-9
                    && to.Rest >= last.Rest
                    && to.Rest - last.Rest <= Plain.MostRestStep + 1e-9
                    && to.Rest <= Math.Max(last.Rest, Plain.MostRest);
            }
        );

    [Property(MaxTest = 25)]
    public Property SettingsAreWhatTheMachineTakes() =>
        Prop.ForAll(
            RandomTrials(),
            trials =>
            {
                TuneOptions o = Plain with { TimeStep = 0.1, RestStep = 0.5, OffsetStep = 0.005 };
                ExposureSettings last = trials[^1].Settings,
                    to = Tuner.Next(trials, o).Settings;
                bool On(double value, double step, double before) =>
                    value == before || Math.Abs(value / step - Math.Round(value / step)) < 1e-6;
                return On(to.Time, 0.1, last.Time)
                    && On(to.Rest, 0.5, last.Rest)
                    && On(to.EdgeOffset, 0.005, last.EdgeOffset);
            }
        );

    /// <summary>Steps so coarse that the next one lies beyond: the light stays, and never turns back.</summary>
    [Property(MaxTest = 25)]
    public Property ACoarseStepNeverTurnsTheLightBack() =>
        Prop.ForAll(
            RandomTrials(),
            trials =>
            {
                double last = trials[^1].Settings.Time,
                    fine = Tuner.Next(trials, Plain).Settings.Time,
                    coarse = Tuner.Next(trials, Plain with { TimeStep = 1 }).Settings.Time;
                return (fine - last) * (coarse - last) >= 0;
            }
        );

    [Fact]
    public void ATightPrintKeepsItsLightAndTakesAnOffset()
    {
        Trial tight = Make.Trial(2.5, 3, 0.03) with { Columns = Make.Columns(0), Slots = Make.Slots(6) };
        NextStep next = Tuner.Next([tight, tight], Plain);
        Assert.Equal((2.5, Reason.Offset), (next.Settings.Time, next.Reason));
        Assert.Equal(-0.03, next.Settings.EdgeOffset, 0.006);
    }

    [Fact]
    public void LightGoesUpForTheColumnThatIsWantedAndNotForOneThatNobodyNeeds()
    {
        Trial print = Make.Trial(2.5, 3, 0) with { Columns = Make.Columns(0.4), Slots = Make.Slots(7) };
        NextStep wanted = Tuner.Next([print], Plain with { WantedColumn = 0.36 }),
            thick = Tuner.Next([print], Plain with { WantedColumn = 0.7 });
        Assert.Equal(Reason.WantedColumn, wanted.Reason);
        Assert.True(wanted.Settings.Time > 2.5);
        Assert.Equal(2.5, thick.Settings.Time);
        Assert.DoesNotContain(
            Tuner.Run([print], Plain with { WantedColumn = 0.7 }).Findings,
            f => f.Severity == Severity.Warning
        );
    }

    [Fact]
    public void LightGoesDownOnlyBeyondWhatIsAllowed()
    {
        Trial deep = Make.Trial(4, 3, 0.04) with { Columns = Make.Columns(0), Slots = Make.Slots(1) };
        NextStep next = Tuner.Next([deep], Plain);
        Assert.Equal(Reason.PrintThrough, next.Reason);
        Assert.InRange(next.Settings.Time, 4 * (1 - Plain.MostDown) - 1e-9, 4 / 1.08);
        Assert.Equal(4, Tuner.Next([deep with { Slots = Make.Slots(5) }], Plain).Settings.Time);
    }

    [Fact]
    public void WithoutAnOffsetExposureTrimsAndTheDesignIsToldWhenItCannot()
    {
        TuneOptions none = Plain with { OffsetAllowed = false, MostRest = 3 };
        Trial loose = Make.Trial(2.5, 3, -0.01) with { Columns = Make.Columns(0), Slots = Make.Slots(5) };
        NextStep next = Tuner.Next([loose, loose], none);
        Assert.Equal((Reason.Trim, 0), (next.Reason, next.Settings.EdgeOffset));
        Assert.True(next.Settings.Time > 2.5);
        Trial tight = Make.Trial(2.5, 3, 0.06) with { Columns = Make.Columns(0), Slots = Make.Slots(5) };
        TuningResult held = Tuner.Run([tight, tight, tight], none with { Hold = Held.Time });
        Assert.Equal(NextKind.Stop, held.Next.Kind);
        Assert.Contains(
            "instead of 0.050 mm",
            held.Findings.Single(f => f.Rule == "design").Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void WhatIsHeldStays()
    {
        Trial print = Make.Trial(2.5, 0, 0.03) with { Columns = Make.Columns(0.5), Slots = Make.Slots(7) };
        ExposureSettings free = Tuner.Next([print], Plain).Settings;
        Assert.True(free.Time != 2.5 && free.Rest != 0 && free.EdgeOffset != 0);
        Assert.Equal(2.5, Tuner.Next([print], Plain with { Hold = Held.Time }).Settings.Time);
        Assert.Equal(0, Tuner.Next([print], Plain with { Hold = Held.Rest }).Settings.Rest);
        Assert.Equal(0, Tuner.Next([print], Plain with { Hold = Held.Offset }).Settings.EdgeOffset);
    }

    [Fact]
    public void WithoutGreyLevelsOffsetsAreWholePixels()
    {
        Trial print = Make.Trial(2.5, 3, 0.045) with { Columns = Make.Columns(0), Slots = Make.Slots(5) };
        TuningResult result = Tuner.Run([print, print], Plain with { Pixel = 0.04 });
        Assert.Equal(-0.04, result.Next.Settings.EdgeOffset, 1e-9);
        Assert.Equal(-1, result.ToType.Pixels);
        Assert.Contains(
            "1 whole pixel (solids drawn smaller",
            result.ToType.Lines.Single(l => l.Key == "edge offset").Value,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void RestGoesWhereTheLogSupportsIt()
    {
        // The second print rested 1.5 s longer and drew back far, or not at all.
        NextStep After(double second) =>
            Tuner.Next([Make.Trial(2.5, 0, 0.03, 0.001), Make.Trial(2.5, 1.5, second, 0.001)], Plain);
        Assert.True(After(0.0).GoalRest > After(0.03).GoalRest);
    }

    [Fact]
    public void WhereAxesHavePixelsOfTheirOwnBothAreTold()
    {
        Trial print = Make.Trial(2.5, 3, 0.045) with { Columns = Make.Columns(0), Slots = Make.Slots(5) };
        TuningResult result = Tuner.Run([print, print], Plain with { Pixel = new PerAxis(0.05, 0.03) });
        // One pixel moves the mean of the axes by 0.04 mm.
        Assert.Equal((-0.04, -1), (Math.Round(result.Next.Settings.EdgeOffset, 9), result.ToType.Pixels!.Value));
        Assert.StartsWith(
            "X -0.050 mm, Y -0.030 mm per edge, 1 whole pixel each",
            result.ToType.Lines.Single(l => l.Key == "edge offset").Value,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentException>(() => Plain with { Pixel = new PerAxis(0.05, 0) });
    }

    [Fact]
    public void AnObjectWithoutBoxesIsNotToldOfBoxesNorGivenAnOffset()
    {
        Trial print = new(new ExposureSettings(2.5, 1), Make.Conditions())
        {
            Columns = Make.Columns(0.3),
            Slots = Make.Slots(6),
        };
        for (int prints = 1; prints <= 3; prints++)
        {
            TuningResult result = Tuner.Run([.. Enumerable.Repeat(print, prints)], Plain with { Hold = Held.Time });
            Assert.DoesNotContain(
                result.Findings,
                f => $"{f.Message} {f.Remedy}".Contains("box", StringComparison.OrdinalIgnoreCase)
            );
            Assert.Equal((1, 0), (result.Next.Settings.Rest, result.Next.Settings.EdgeOffset));
            Assert.Equal(prints == 1 ? NextKind.Confirm : NextKind.Stop, result.Next.Kind);
        }
    }

    [Fact]
    public void ALooseJointThatNoOffsetReachesGetsLightBeyondPrintTime()
    {
        TuneOptions none = Plain with { OffsetAllowed = false, MostSlower = 0 };
        Trial loose = Make.Trial(2.5, 3, -0.02) with { Columns = Make.Columns(0), Slots = Make.Slots(6) };
        NextStep next = Tuner.Next([loose, loose], none);
        Assert.Equal(Reason.Trim, next.Reason);
        Assert.True(next.Settings.Time > 2.5);
        Assert.Equal(3, next.Settings.Rest);
    }

    [Fact]
    public void EveryNumberIsThere()
    {
        TuningResult result = Tuner.Run([
            Make.Trial(2.5, 1.2, 0.01, offset: -0.01) with
            {
                Cycle = new LayerCycle(6, 28, 8),
            },
        ]);
        Assert.Equal(
            [
                "exposure",
                "rest before exposure",
                "  counted from light-off",
                "edge offset",
                "base layers",
                "must be off",
            ],
            result.ToType.Lines.Select(l => l.Key)
        );
        Assert.Equal(result.Next.Settings.Rest + 8, result.ToType.RestFromLightOff, 1e-9);
        Assert.Equal("6 of 28 s", result.ToType.Lines.Single(l => l.Key == "base layers").Value);
    }

    [Fact]
    public void OptionsAreCheckedWhenTheyAreSet()
    {
        Assert.Throws<ArgumentException>(() => Plain with { Tolerance = 0 });
        Assert.Throws<ArgumentException>(() => Plain with { Target = 9 });
        Assert.Throws<ArgumentException>(() => Plain with { Probability = double.NaN });
        Assert.Throws<ArgumentException>(() => Plain with { OffsetStep = 0 });
        Assert.Throws<ArgumentException>(() => ExposurePriors.Default with { GrowthDeviation = 0 });
        Assert.Throws<ArgumentException>(() => Tuner.Run([]));
    }

    [Fact]
    public void OtherConditionsAreKeptApartAndSaid()
    {
        Trial fine = new(new ExposureSettings(1.3), Make.Conditions(0.03)) { GrowthX = new GrowthReading(0.5, 0.001) };
        TuningResult with = Tuner.Run([fine, Make.Trial(2, 0, 0.01)]);
        Assert.Equal("layer 0.03 mm instead of 0.05 mm", with.KeptApart.Single().Why);
        Assert.Equal(Tuner.Run([Make.Trial(2, 0, 0.01)]).Next, with.Next);
        Assert.Contains(
            with.Findings,
            f =>
                f.Rule == "kept-apart"
                && f.Message.StartsWith("Trial 1 (1.3 s exposure, 0 s rest) was kept apart", StringComparison.Ordinal)
        );
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
        TuningResult result = Tuner.Run([
            Make.Trial(2, 3, -0.01) with
            {
                Columns = Make.Columns(0.4),
                Slots = Make.Slots(6),
            },
        ]);
        Assert.Equal(13, result.Curve.Count);
        Assert.All(
            result.Curve.Zip(result.Curve.Skip(1)),
            p => Assert.True(p.Second.Time > p.First.Time && p.Second.PrintTime > p.First.PrintTime)
        );
        CurvePoint point = result.Curve[2];
        Assert.InRange(point.Time, point.Low, point.High);
        // 5 base layers of 25 s, 1195 layers to 60 mm, each with 1 s of rest and 7 s of lift.
        Assert.Equal(5 * (25 + 1 + 7) + 1195 * (point.Time + 1 + 7), point.PrintTime, 1e-6);
    }

    [Fact]
    public void ATargetMovesEveryJointAlike()
    {
        TuningResult result = Tuner.Run([Make.Trial(2, 0, 0)], Plain with { Target = 0.08 });
        Assert.Equal(-0.015, result.TargetGrowth, 1e-12);
        Assert.All(result.Clearances, c => Assert.Equal(0.08, c.Target, 1e-12));
    }

    internal static Arbitrary<Trial[]> RandomTrials() =>
        (
            from n in Gen.Choose(1, 4)
            from steps in Gen.Choose(-100, 100).ArrayOf(3 * n)
            from columns in Gen.Choose(0, 9)
            from slots in Gen.Choose(0, 8)
            select Enumerable
                .Range(0, n)
                .Select(i =>
                    Make.Trial(
                        Math.Round(2 * Math.Exp(steps[3 * i] / 100.0), 2),
                        Math.Round(3 + steps[3 * i + 1] / 33.4, 1),
                        steps[3 * i + 2] / 1500.0
                    ) with
                    {
                        Columns = Make.Columns(columns / 10.0),
                        Slots = Make.Slots(slots),
                    }
                )
                .ToArray()
        ).ToArbitrary();

    /// <summary>Nothing on the plate: the light is doubled, and what comes before any fine tuning is named.</summary>
    [Theory]
    [InlineData(true, "All columns were lost and no box was read.")]
    [InlineData(false, "All columns were lost.")]
    public void WhereNothingPrintedTheLightIsDoubled(bool boxes, string said)
    {
        Trial print = new(new ExposureSettings(2.5, 1), Make.Conditions())
        {
            Columns = Make.Columns(9),
            Joints = boxes ? [new JointOutcome("joint1", 0.05)] : [],
        };
        TuningResult result = Tuner.Run([print]);
        Assert.Equal((NextKind.Change, 5.0), (result.Next.Kind, result.Next.Settings.Time));
        Finding found = result.Findings.Single(f => f.Rule == "nothing-printed");
        Assert.Equal((Severity.Warning, said), (found.Severity, found.Message));
        Assert.StartsWith("Base exposure, level of the plate", found.Remedy, StringComparison.Ordinal);
    }

    /// <summary>
    /// A comb that is closed all through tells no depth, but that it is beyond what is allowed: light does not go up,
    /// however many columns it would save. Where its highest tunnel is within what is allowed it tells nothing.
    /// </summary>
    [Theory]
    [InlineData(0.4, false)]
    [InlineData(0.9, true)]
    public void LightDoesNotGoUpPastACombThatIsClosed(double allowed, bool up)
    {
        Trial print = Make.Trial(2.5, 1.5, 0) with { Columns = Make.Columns(0.5), Slots = Make.Slots(0) };
        TuneOptions options = Plain with { MostPrintThrough = allowed };
        Assert.Equal(up, Tuner.Next([print], options).Settings.Time > 2.5);
        Assert.Equal(up, Tuner.Next([print], options with { WantedColumn = 0.4 }).Settings.Time > 2.5);
        Finding said = Tuner.Run([print], options).Findings.Single(f => f.Rule == "print-through");
        Assert.StartsWith("Every slot was closed", said.Message, StringComparison.Ordinal);
        Assert.Equal(!up, said.Remedy.Contains("light does not go up", StringComparison.Ordinal));
    }
}
