using CalibGeom.Verification.Tuning.Regression;
using static CalibGeom.Verification.Tests.Tuning.Regression.BinomialRegressionTests;

namespace CalibGeom.Verification.Tests.Tuning.Regression;

public class LevelEstimateTests
{
    // CHECKS.md 9.1, COMPUTED: the dose that kills half the beetles.
    [Theory]
    [InlineData("Logit", 1.77172096445, 0.003858055311, 1.764159315, 1.779282614, 1.763858172, 1.779200475)]
    [InlineData("Probit", 1.77085236219, 0.003803336807, 1.763397959, 1.778306765, 1.763114319, 1.7781938)]
    [InlineData(
        "ComplementaryLogLog",
        1.77875303373,
        0.004006530085,
        1.770900379,
        1.786605688,
        1.770212883,
        1.786163248
    )]
    public void HalfTheBeetles(
        string link,
        double value,
        double error,
        double waldLow,
        double waldHigh,
        double fiellerLow,
        double fiellerHigh
    )
    {
        var level = new LevelEstimate(BinomialRegression.Fit(BeetleData, Enum.Parse<Link>(link)), 0.5);
        Near(value, level.Value);
        Near(error, level.StandardError);
        Near(waldLow, level.Wald().Low);
        Near(waldHigh, level.Wald().High);
        Near(fiellerLow, level.Fieller()!.Value.Low);
        Near(fiellerHigh, level.Fieller()!.Value.High);
    }

    [Fact]
    public void TheProfileOfTheBeetles()
    {
        // CHECKS.md 9.1, COMPUTED.
        (double low, double high) = new LevelEstimate(BinomialRegression.Fit(BeetleData), 0.5).Profile(1);
        Near(1.7639821036, low);
        Near(1.7791872458, high);
    }

    [Fact]
    public void OtherLevelsOfTheBeetles()
    {
        // CHECKS.md 9.1: logit COMPUTED, complementary log-log READ from the README of the R package investr.
        BinomialFit logit = BinomialRegression.Fit(BeetleData);
        Near(1.70760647092, new LevelEstimate(logit, 0.1).Value);
        var most = new LevelEstimate(logit, 0.9);
        Near(1.83583545797, most.Value);
        Near(0.006192536644, most.StandardError);
        Near(1.825055486, most.Fieller()!.Value.Low);
        Near(1.849890517, most.Fieller()!.Value.High);
        BinomialFit log = BinomialRegression.Fit(BeetleData, Link.ComplementaryLogLog);
        Assert.Equal(1.833221, new LevelEstimate(log, 0.9).Value, 1e-6);
        Assert.Equal(1.864669, new LevelEstimate(log, 0.99).Value, 1e-6);
    }

    [Fact]
    public void FinneysRotenone()
    {
        // CHECKS.md 9.2, COMPUTED.
        BinomialFit fit = BinomialRegression.Fit(RotenoneData, Link.Probit);
        var half = new LevelEstimate(fit, 0.5);
        Near(0.685337861843, half.Value);
        Near(0.02206838494, half.StandardError);
        Near(0.6399337178, half.Fieller()!.Value.Low);
        Near(0.7287096891, half.Fieller()!.Value.High);
        var most = new LevelEstimate(fit, 0.9);
        Near(9.761429938, Math.Pow(10, most.Value));
        Near(8.39906697, Math.Pow(10, most.Fieller()!.Value.Low));
        Near(12.15532492, Math.Pow(10, most.Fieller()!.Value.High));
        var logit = new LevelEstimate(BinomialRegression.Fit(RotenoneData), 0.5);
        Near(4.828917944, Math.Pow(10, logit.Value));
        Near(4.341042833, Math.Pow(10, logit.Fieller()!.Value.Low));
        Near(5.35009659, Math.Pow(10, logit.Fieller()!.Value.High));
    }

    // CHECKS.md 9.3: printed by MASS (READ); probit errors as converged (COMPUTED).
    [Theory]
    [InlineData("Logit", 0.25, 2.231265, 0.2499089)]
    [InlineData("Logit", 0.5, 3.263587, 0.2297539)]
    [InlineData("Logit", 0.75, 4.295910, 0.2746874)]
    [InlineData("Probit", 0.25, 2.191229, 0.2384489)]
    [InlineData("Probit", 0.5, 3.257703, 0.2240691)]
    [InlineData("Probit", 0.75, 4.324177, 0.2668753)]
    public void FemaleBudworms(string link, double probability, double value, double error)
    {
        var level = new LevelEstimate(
            BinomialRegression.Fit(Budworm(), Enum.Parse<Link>(link)),
            probability,
            2,
            [1, 0, 0]
        );
        Assert.Equal(value, level.Value, 1e-6);
        Assert.Equal(error, level.StandardError, 1e-6);
    }

    [Fact]
    public void MaleBudworms()
    {
        // CHECKS.md 9.3, COMPUTED.
        var level = new LevelEstimate(BinomialRegression.Fit(Budworm()), 0.5, 2, [0, 1, 0]);
        Near(2.229262, level.Value, 1e-6);
        Near(0.2259649, level.StandardError, 1e-6);
    }

    [Theory]
    [InlineData(1, false)]
    [InlineData(4, true)]
    public void UnderSeparationEnoughColumnsBoundTheLevel(int copies, bool bounded)
    {
        double[] n = [copies, copies, copies, copies, copies, copies];
        BinomialFit firth = BinomialRegression.Fit(
            BinomialGroup.Of([1, 2, 3, 4, 5, 6], n, [0, 0, 0, copies, copies, copies]),
            penalised: true
        );
        var level = new LevelEstimate(firth, 0.5);
        (double low, double high) = level.Profile(10);
        Assert.Equal(bounded, level.Fieller() is not null);
        Assert.Equal(bounded, double.IsFinite(low));
        Assert.Equal(bounded, double.IsFinite(high));
        if (!bounded)
            return;
        Assert.InRange(low, 2, 3.4);
        Assert.InRange(high, 3.6, 5);
        Assert.Equal(3.5, (low + high) / 2, 1e-6);
    }
}
