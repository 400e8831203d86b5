using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Tuning;

public class ExposureResponseTests
{
    [Fact]
    public void WithoutTrialsThePriorSpeaks()
    {
        ExposureResponse prior = ExposureResponse.Of([], referenceTime: 2);
        // Drawn, so within what some thousand draws can tell.
        Assert.Equal(0.020, prior.GrowthAtReference, 0.003);
        Assert.Equal(0.035, prior.TimeEffect, 0.003);
        Assert.Equal(0.012, prior.RestEffect, 0.0015);
        Assert.Equal(1.5, prior.RestTime, 0.1);
        Assert.Equal(0.030, prior.At(new ExposureSettings(2)).Uncertainty, 0.003);
    }

    [Fact]
    public void PriorsSpreadAsDocumented()
    {
        // DESIGN: b 0.008 to 0.15, c 0.002 to 0.07, tau 0.5 to 4.5 are the central 95 %.
        ExposurePriors p = ExposurePriors.Default;
        foreach (
            (LogNormalPrior prior, double low, double high) in new[]
            {
                (p.TimeEffect, 0.008, 0.15),
                (p.RestEffect, 0.002, 0.07),
                (p.RestTime, 0.5, 4.5),
            }
        )
            Assert.Equal(Math.Log(high / low), 2 * 1.959963984540054 * prior.LogDeviation, 1e-9);
    }

    [Fact]
    public void ManyPreciseTrialsOverruleThePrior()
    {
        double Truth(double t, double r) => 0.011 + 0.025 * Math.Log(t / 2) - 0.012 * (1 - Math.Exp(-r / 1.5));
        var sharp = ExposurePriors.Default with { BetweenPrints = new LogNormalPrior(5e-4, 0.1), LackOfFit = 5e-4 };
        Trial[] trials = (
            from t in new[] { 1.4, 2, 2.8, 4 }
            from r in new[] { 0, 1.0, 2.5, 5 }
            select Make.Trial(t, r, Truth(t, r), 5e-4)
        ).ToArray();
        ExposureResponse response = ExposureResponse.Of(trials, sharp, 2);
        Assert.Equal(0.025, response.TimeEffect, 1e-3);
        Assert.Equal(0.012, response.RestEffect, 1.5e-3);
        Assert.Equal(1.5, response.RestTime, 0.4);
        Assert.Equal(Truth(3, 2), response.At(new ExposureSettings(3, 2)).Mean, 5e-4);
        Assert.Equal(3, response.TimeFor(Truth(3, 2.5), 2.5), 0.1);
    }

    [Fact]
    public void OneTrialIsWeighedByItsUncertainty()
    {
        ExposureResponse sharp = ExposureResponse.Of([Make.Trial(2, 0, 0.05, 0.001)]),
            dull = ExposureResponse.Of([Make.Trial(2, 0, 0.05, 0.05)]);
        Assert.InRange(sharp.At(new ExposureSettings(2)).Mean, 0.045, 0.05);
        Assert.InRange(dull.At(new ExposureSettings(2)).Mean, 0.020, 0.036);
    }

    [Fact]
    public void ASharedBiasDoesNotAverageAway()
    {
        Trial Biased(int _) =>
            new(new ExposureSettings(2), Make.Conditions())
            {
                GrowthX = new GrowthReading(0.02, 0.001, 0.01),
                GrowthY = new GrowthReading(0.02, 0.001, 0.01),
            };
        double one = ExposureResponse.Of([Biased(0)]).At(new ExposureSettings(2)).Uncertainty;
        double many = ExposureResponse
            .Of(Enumerable.Range(0, 12).Select(Biased).ToArray())
            .At(new ExposureSettings(2))
            .Uncertainty;
        Assert.InRange(many, 0.007, one);
    }

    [Fact]
    public void AnEdgeOffsetIsTakenOffTheGrowth()
    {
        ExposureResponse plain = ExposureResponse.Of([Make.Trial(2, 0, 0.02)]),
            offset = ExposureResponse.Of([Make.Trial(2, 0, 0.01, offset: -0.01)]);
        Assert.Equal(plain.GrowthAtReference, offset.GrowthAtReference, 1e-9);
        Assert.Equal(
            plain.At(new ExposureSettings(2, 0, 0.003)).Mean,
            plain.At(new ExposureSettings(2)).Mean + 0.003,
            1e-12
        );
    }

    [Fact]
    public void AFeltFitIsAReadingToo()
    {
        var trial = new Trial(new ExposureSettings(2), Make.Conditions());
        double Growth(FeltFit fit) =>
            ExposureResponse
                .Of([trial with { Joints = [new JointOutcome("joint1", 0.05, fit)] }])
                .At(new ExposureSettings(2))
                .Mean;
        Assert.True(Growth(FeltFit.Refuses) > Growth(FeltFit.Binds));
        Assert.True(Growth(FeltFit.Binds) > Growth(FeltFit.Slides));
        Assert.True(Growth(FeltFit.Slides) > Growth(FeltFit.Rattles));
    }

    [Fact]
    public void InAJointRelievedAlongOneAxisTheOtherDecidesWhetherItEnters()
    {
        var trial = new Trial(new ExposureSettings(2), Make.Conditions());
        double Growth(JointOutcome joint) =>
            ExposureResponse.Of([trial with { Joints = [joint] }]).At(new ExposureSettings(2)).Mean;
        double even = Growth(new JointOutcome("joint1", 0.05, FeltFit.Refuses)),
            relieved = Growth(new JointOutcome("joint1", 0.05, FeltFit.Refuses, 0.35));
        Assert.Equal(even, relieved, 0.004);
        Assert.Equal(even, Growth(new JointOutcome("joint1", 0.35, FeltFit.Refuses, 0.05)), 0.004);
        JointChance[] chances = Tuner
            .Run([Make.Trial(2, 0, 0) with { Joints = [new JointOutcome("joint1", 0.05, null, 0.35)] }])
            .Clearances.ToArray();
        Assert.Equal([0.05, 0.35], chances.Select(c => c.Target));
        Assert.Equal(chances[0].OnTarget, chances[1].OnTarget, 2e-3);
    }

    [Fact]
    public void RepeatPrintsTeachHowMuchPrintsDiffer()
    {
        double Learnt(double spread) =>
            ExposureResponse
                .Of([.. new[] { -1.0, 1, -0.5, 0.5, 1, -1 }.Select(z => Make.Trial(2, 0, 0.02 + spread * z))])
                .BetweenPrints;
        Assert.True(Learnt(0.0005) < 0.004);
        Assert.True(Learnt(0.012) > 0.008);
    }

    [Fact]
    public void TheSameWordOfTheSameJointAgainIsNearlyNoNews()
    {
        Trial felt = new(new ExposureSettings(2), Make.Conditions())
        {
            Joints = [new JointOutcome("joint1", 0.05, FeltFit.Slides)],
        };
        double Spread(int times) =>
            ExposureResponse.Of([.. Enumerable.Repeat(felt, times)]).At(new ExposureSettings(2)).Uncertainty;
        double one = Spread(1),
            eight = Spread(8);
        // By hand, for a flat belief: one word leaves a band 0.05 mm wide, blurred by 0.014 mm; eight of one person
        // one of
        // some 0.024 mm, blurred by the 0.009 mm they share, 0.56 of it. Eight independent ones would leave a quarter.
        Assert.InRange(eight / one, 0.5, 1.02);
    }

    [Fact]
    public void WhatTheCaliperMayBeWrongByStandsApart()
    {
        Trial biased = new(new ExposureSettings(2), Make.Conditions())
        {
            GrowthX = new GrowthReading(0.02, 0.001, 0.01),
            GrowthY = new GrowthReading(0.02, 0.001, 0.01),
        };
        ExposureResponse many = ExposureResponse.Of([.. Enumerable.Repeat(biased, 8)]);
        double with = many.At(biased.Settings).Uncertainty,
            without = many.At(biased.Settings, withCaliper: false).Uncertainty;
        Assert.True(without < 0.004);
        Assert.InRange(many.CaliperBias.Uncertainty, 0.008, 0.0105);
        Assert.Equal(with, Math.Sqrt(without * without + Math.Pow(many.CaliperBias.Uncertainty, 2)), 0.002);
    }

    [Fact]
    public void MoreExposureSavesColumns()
    {
        ColumnSurvival columns = ColumnSurvival.Of([Make.Trial(1.3, 0, 0.02) with { Columns = Make.Columns(0.4) }])!;
        Assert.True(columns.Limit(1.8).Diameter < columns.Limit(1.3).Diameter / 1.05);
    }

    [Fact]
    public void PriorsOutOfRangeAndMissingTimesAreRefused()
    {
        Assert.Throws<ArgumentException>(() => ExposureResponse.Of([]));
        Assert.Throws<ArgumentException>(() =>
            ExposureResponse.Of([], ExposurePriors.Default with { LackOfFit = 0 }, 2)
        );
        Assert.Throws<ArgumentException>(() => new LogNormalPrior(0, 1));
        Assert.Throws<ArgumentException>(() => new FitThresholds(0.02, 0.01));
    }
}
