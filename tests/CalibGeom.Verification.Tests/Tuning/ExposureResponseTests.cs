using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Verification.Tests.Tuning;

public class ExposureResponseTests
{
    private static readonly ExposureSettings Short = new(1.3, 0),
        Long = new(1.8, 2.5);

    [Fact]
    public void WithoutTrialsThePriorSpeaks()
    {
        ExposureResponse prior = ExposureResponse.Learn([], referenceTime: 2);
        Assert.Equal(0.020, prior.GrowthAtReference, 1e-9);
        Assert.Equal(0.018, prior.TimeEffect, 1e-9);
        Assert.Equal(0.006, prior.RestEffect, 1e-9);
        Assert.Equal(1.0, prior.RestTime, 1e-9);
        Assert.Null(prior.FitProbability);
        Assert.Equal(0.015, prior.At(new ExposureSettings(2)).Uncertainty, 0.0015);
    }

    [Fact]
    public void PriorsSpreadAsDocumented()
    {
        // DESIGN: b 0.007 to 0.045, c 0.0015 to 0.025, tau 0.4 to 2.5 are the central 95 %.
        ExposurePriors p = ExposurePriors.Default;
        foreach (
            (LogNormalPrior prior, double low, double high) in new[]
            {
                (p.TimeEffect, 0.007, 0.045),
                (p.RestEffect, 0.0015, 0.025),
                (p.RestTime, 0.4, 2.5),
            }
        )
            Assert.Equal(Math.Log(high / low), 2 * 1.959963984540054 * prior.LogDeviation, 1e-9);
    }

    [Fact]
    public void ManyPreciseTrialsOverruleThePrior()
    {
        double Truth(double t, double r) => 0.011 + 0.025 * Math.Log(t / 2) - 0.012 * (1 - Math.Exp(-r / 1.5));
        var sharp = ExposurePriors.Default with { BetweenPrints = 1e-5, LackOfFit = 1e-5 };
        Trial[] trials = (
            from t in new[] { 1.4, 2, 2.8, 4 }
            from r in new[] { 0, 1.0, 2.5, 5 }
            select Make.Trial(t, r, Truth(t, r), 1e-5)
        ).ToArray();
        ExposureResponse response = ExposureResponse.Learn(trials, sharp, 2);
        Assert.Equal(0.025, response.TimeEffect, 1e-4);
        Assert.Equal(0.012, response.RestEffect, 2e-4);
        Assert.Equal(1.5, response.RestTime, 0.03);
        Assert.Equal(Truth(3, 2), response.At(new ExposureSettings(3, 2)).Mean, 2e-5);
        Assert.Equal(3, response.TimeFor(Truth(3, 2.5), 2.5), 0.01);
        Assert.True(Math.Abs(response.CurvatureRatio!.Value) < 2);
    }

    [Fact]
    public void OneTrialIsWeighedByItsUncertainty()
    {
        ExposureResponse sharp = ExposureResponse.Learn([Make.Trial(2, 0, 0.05, 0.001)]),
            dull = ExposureResponse.Learn([Make.Trial(2, 0, 0.05, 0.05)]);
        Assert.InRange(sharp.At(new ExposureSettings(2)).Mean, 0.045, 0.05);
        Assert.InRange(dull.At(new ExposureSettings(2)).Mean, 0.020, 0.03);
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
        double one = ExposureResponse.Learn([Biased(0)]).At(new ExposureSettings(2)).Uncertainty;
        double many = ExposureResponse
            .Learn(Enumerable.Range(0, 12).Select(Biased).ToArray())
            .At(new ExposureSettings(2))
            .Uncertainty;
        Assert.InRange(many, 0.007, one);
    }

    [Fact]
    public void AnEdgeOffsetIsTakenOffTheGrowth()
    {
        ExposureResponse plain = ExposureResponse.Learn([Make.Trial(2, 0, 0.02)]),
            offset = ExposureResponse.Learn([Make.Trial(2, 0, 0.01, offset: -0.01)]);
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
                .Learn([trial with { Joints = [new JointOutcome("joint1", 0.05, fit)] }])
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
            ExposureResponse.Learn([trial with { Joints = [joint] }]).At(new ExposureSettings(2)).Mean;
        double even = Growth(new JointOutcome("joint1", 0.05, FeltFit.Refuses)),
            relieved = Growth(new JointOutcome("joint1", 0.05, FeltFit.Refuses, 0.35));
        Assert.Equal(even, relieved, 1e-6);
        Assert.Equal(even, Growth(new JointOutcome("joint1", 0.35, FeltFit.Refuses, 0.05)), 1e-6);
        JointChance[] chances = Tuner
            .Advise([Make.Trial(2, 0, 0) with { Joints = [new JointOutcome("joint1", 0.05, null, 0.35)] }])
            .Chances.ToArray();
        Assert.Equal([0.05, 0.35], chances.Select(c => c.Target));
        Assert.Equal(chances[0].OnTarget, chances[1].OnTarget, 1e-9);
    }

    [Fact]
    public void TrialsThatContradictEachOtherAreToldSo()
    {
        Assert.True(
            ExposureResponse
                .Learn([Make.Trial(2, 0, 0.02), Make.Trial(2, 0, 0.021), Make.Trial(2, 0, 0.019)])
                .FitProbability > 0.05
        );
        Assert.True(
            ExposureResponse
                .Learn([Make.Trial(2, 0, 0.02), Make.Trial(2, 0, 0.06), Make.Trial(2.5, 0, -0.02)])
                .FitProbability < 0.05
        );
    }

    [Fact]
    public void ACurvedResponseIsSeen()
    {
        var sharp = ExposurePriors.Default with { BetweenPrints = 1e-4, LackOfFit = 1e-4 };
        Trial[] trials = new[] { 1, 1.5, 2, 3, 4.5 }
            .Select(t => Make.Trial(t, 0, 0.02 + 0.018 * Math.Log(t / 2) - 0.01 * Math.Pow(Math.Log(t / 2), 2), 1e-4))
            .ToArray();
        Assert.True(ExposureResponse.Learn(trials, sharp, 2).CurvatureRatio < -2);
        Assert.Null(ExposureResponse.Learn(trials[..2], sharp, 2).CurvatureRatio);
    }

    [Fact]
    public void MoreRestAndMoreExposureCanGiveTheSameFit()
    {
        // Common practice, no source: at 30 micrometre layers 1.3 s without rest and 1.8 s with 2.5 s of rest can fit
        // alike.
        (double low, double high) = ExposureResponse.Learn([], referenceTime: 1.3).ChangeInterval(Short, Long);
        Assert.True(low < 0 && high > 0);
        (double without, _) = ExposureResponse
            .Learn([], referenceTime: 1.3, restActs: false)
            .ChangeInterval(Short, Long);
        Assert.True(without > 0);
        // And more columns stand at the longer exposure.
        ColumnSurvival columns = ColumnSurvival.Learn([Make.Trial(1.3, 0, 0.02) with { Columns = Make.Columns(0.4) }])!;
        Assert.True(columns.Limit(1.8).Diameter < columns.Limit(1.3).Diameter / 1.05);
    }

    [Fact]
    public void ForMostResinsTheGainOfRestFadesBetweenTwoAndFourSeconds()
    {
        // Common practice, no source: 95 % of the effect is reached after 2 to 4 s for more than half of what the prior
        // believes.
        LogNormalPrior tau = ExposurePriors.Default.RestTime;
        int inside = Enumerable
            .Range(0, 999)
            .Count(i =>
            {
                double full =
                    tau.At(MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, (i + 0.5) / 999)) * Math.Log(20);
                return full is >= 2 and <= 4;
            });
        Assert.InRange(inside / 999.0, 0.5, 0.8);
        ExposureResponse prior = ExposureResponse.Learn([], referenceTime: 2);
        Assert.True(prior.RestGain(0) > 0.002);
        Assert.True(prior.RestGain(2, 0.15) < 0.002);
    }

    [Fact]
    public void PriorsOutOfRangeAndMissingTimesAreRefused()
    {
        Assert.Throws<ArgumentException>(() => ExposureResponse.Learn([]));
        Assert.Throws<ArgumentException>(() =>
            ExposureResponse.Learn([], ExposurePriors.Default with { BetweenPrints = 0 }, 2)
        );
        Assert.Throws<ArgumentException>(() => new LogNormalPrior(0, 1));
        Assert.Throws<ArgumentException>(() => new FitThresholds(0.02, 0.01));
    }
}
