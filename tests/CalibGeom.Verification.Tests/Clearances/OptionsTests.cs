using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tests.Uncertainty;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.Clearances;

public class OptionsTests
{
    [Fact]
    public void ValuesOutOfRangeAreRefused()
    {
        Assert.Throws<ArgumentException>(() => new PredictionOptions { FormError = -1 });
        Assert.Throws<ArgumentException>(() => new PredictionOptions { ModelDeviation = double.NaN });
        Assert.Throws<ArgumentException>(() => new PredictionOptions { PixelPitch = 0 });
        Assert.Throws<ArgumentException>(() => new PredictionOptions { Draws = 10 });
        Assert.Throws<ArgumentException>(() => new PredictionOptions { ScalePrior = 0 });
        Assert.Throws<ArgumentException>(() => new PredictionOptions { RepeatabilityDegreesOfFreedom = 0 });
        Assert.Throws<ArgumentException>(() => new FitThresholds(0.1, 0.05));
        Assert.Throws<ArgumentException>(() => new FitThresholds(deviation: 0));
    }

    [Property(MaxTest = 200)]
    public bool FitProbabilitiesAddUpToOneAndAreNeverNegative(short a, byte spread)
    {
        double tighter = a / 1e5,
            mean = tighter + spread / 2000.0;
        double[] p = Enum.GetValues<FeltFit>()
            .Select(f => FitThresholds.Default.Probability(f, tighter, mean))
            .ToArray();
        return p.All(v => v >= 0) && Math.Abs(p.Sum() - 1) < 1e-12;
    }

    [Fact]
    public void BivariateNormalHasItsKnownValues()
    {
        // Both over zero from zero means: 1/4 + asin(r)/(2 pi), Sheppard (1899).
        foreach (double r in new[] { -0.9, -0.3, 0, 0.5, 0.95 })
            Near.Absolute(
                0.25 + Math.Asin(r) / (2 * Math.PI),
                BivariateNormal.BothBetween(0, 1, 0, 2, r, 0, double.PositiveInfinity),
                1e-6
            );
        Near.Absolute(0.841344746, BivariateNormal.BothBetween(1, 1, 9, 1, 0.3, 0, double.PositiveInfinity), 1e-8);
        Near.Absolute(1.25, BivariateNormal.Mean((x, y) => x * y, 0.5, 1, 0.5, 2, 0.5), 1e-9);
    }
}
