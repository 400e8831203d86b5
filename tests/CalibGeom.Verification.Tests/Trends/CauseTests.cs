using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Trends.Changes;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Trends;

/// <summary>The grid of effects of light stands for what is believed of them.</summary>
public class CauseTests
{
    [Theory]
    [InlineData(0.75, 0.46)]
    [InlineData(0.2, 0.2)]
    [InlineData(0.1, 0.6)]
    public void HasTheMomentsOfBothLaws(double growth, double through)
    {
        TrendOptions options = new()
        {
            LightEffect = new LogNormalPrior(0.035, growth),
            PenetrationDepth = new LogNormalPrior(0.12, through),
        };
        Cause[] light = Light([Gauge.Growth, Gauge.PrintThrough], options);
        double[] b = [.. light.Select(c => Math.Log(c.Growth / 0.035))],
            d = [.. light.Select(c => Math.Log(c.PrintThrough / 0.12))];
        Assert.Equal(0, Mean(light, b), 1e-9);
        Assert.Equal(0, Mean(light, d), 1e-9);
        // A grid that ends at 2.4 deviations, and what lies between its steps, make up for each other within 5 %.
        double between = light[0].Coarse;
        Assert.Equal(growth, Root(Mean(light, b, b) + between * between), 0.05 * growth);
        Assert.Equal(through, Root(Mean(light, d, d) + between * between), 0.05 * through);
        Assert.Equal(0, Mean(light, b, d) + between * between, 0.06 * growth * through);
    }

    [Theory]
    [InlineData(Gauge.Growth, 0.748)]
    [InlineData(Gauge.PrintThrough, 0.457)]
    public void OneGaugeHasItsOwn(Gauge gauge, double deviation)
    {
        Cause[] light = Light([gauge], TrendOptions.Default);
        double[] answers = [.. light.Select(c => Math.Log(c.Response[(int)gauge]))];
        double mean = Mean(light, answers),
            between = light[0].Coarse;
        Assert.Equal(
            deviation,
            Root(Mean(light, answers, answers) - mean * mean + between * between),
            0.03 * deviation
        );
    }

    private static Cause[] Light(Gauge[] gauges, TrendOptions options) =>
        [.. Cause.All(gauges, options).Where(c => c.IsLight)];

    private static double Mean(Cause[] causes, double[] a, double[]? b = null) =>
        causes.Select((c, i) => c.Weight * a[i] * (b?[i] ?? 1)).Sum() / causes.Sum(c => c.Weight);

    private static double Root(double square) => Math.Sqrt(square);
}
