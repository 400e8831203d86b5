using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Uncertainty;

/// <summary>
/// JCGM 101:2008, clause 9, and NPL DEM-ES-011 9.2. Exact values were recomputed in closed form or with ten million
/// trials; where a published figure is noted it agrees with them. Tolerances: mean 4u/sqrt(N), u 0.3 %, interval ends
/// 0.02 u.
/// </summary>
public class MonteCarloTests
{
    private const int Trials = 200_000;
    private static readonly double Root3 = Math.Sqrt(3);

    private static MonteCarloResult Run(InputSet inputs, Func<double[], double> model) =>
        inputs.MonteCarlo(model, new MonteCarloOptions { Trials = Trials, Seed = 20 });

    private static void Check(MonteCarloResult r, double mean, double u, double uTolerance = 0.005)
    {
        Near.Absolute(mean, r.Mean, 4 * u / Math.Sqrt(Trials));
        Near.Relative(u, r.StandardUncertainty, uTolerance);
    }

    [Fact]
    public void AdditiveWithGaussians()
    {
        // 9.2.2: u 2.0, interval +-3.92.
        var inputs = new InputSet(Enumerable.Range(1, 4).Select(i => InputQuantity.Normal($"X{i}", 0, 1)));
        MonteCarloResult r = Run(inputs, x => x.Sum());
        Check(r, 0, 2);
        Near.Absolute(3.919927969, r.Symmetric.High, 0.04);
        Near.Absolute(3.919927969, inputs.Propagate(x => x.Sum()).Expanded(), 1e-8);
    }

    [Fact]
    public void AdditiveWithRectangles()
    {
        // 9.2.3: interval +-3.88; exactly 2 sqrt(3) (2 - (3/5)^(1/4)).
        MonteCarloResult r = Run(
            new InputSet(Enumerable.Range(1, 4).Select(i => InputQuantity.Rectangular($"X{i}", 0, Root3))),
            x => x.Sum()
        );
        Check(r, 0, 2);
        Near.Absolute(3.8794067413, r.Symmetric.High, 0.04);
        Near.Absolute(-3.8794067413, r.Symmetric.Low, 0.04);
    }

    [Fact]
    public void AdditiveWithOneLargeRectangle()
    {
        // 9.2.4: u 10.1, first-order +-19.9, Monte Carlo +-17.0.
        var inputs = new InputSet(
            Enumerable.Range(1, 4).Select(i => InputQuantity.Rectangular($"X{i}", 0, i == 4 ? 10 * Root3 : Root3))
        );
        MonteCarloResult r = Run(inputs, x => x.Sum());
        Check(r, 0, 10.1488915651);
        Near.Absolute(17.0158140999, r.Symmetric.High, 0.2);
        Near.Relative(19.8914619526, inputs.Propagate(x => x.Sum()).Expanded(), 1e-9);
    }

    [Fact]
    public void MassCalibration()
    {
        // 9.3: GUF1 0.0539, MCM 0.0754, GUF2 0.0750.
        var inputs = new InputSet([
            InputQuantity.Normal("mRc", 100_000, 0.050),
            InputQuantity.Normal("dmRc", 1.234, 0.020),
            InputQuantity.Rectangular("rhoA", 1.20, 0.10),
            InputQuantity.Rectangular("rhoW", 8000, 1000),
            InputQuantity.Rectangular("rhoR", 8000, 50),
        ]);
        Func<double[], double> model = x => (x[0] + x[1]) * (1 + (x[2] - 1.2) * (1 / x[3] - 1 / x[4])) - 100_000;
        Near.Relative(0.05385164807, inputs.Propagate(model).StandardUncertainty, 1e-6);
        Near.Relative(0.07496347385, inputs.SecondOrderUncertainty(model), 2e-4);
        MonteCarloResult r = Run(inputs, model);
        Check(r, 1.23402, 0.0755);
        Near.Absolute(1.0844, r.Symmetric.Low, 0.02 * 0.0755);
        Near.Absolute(1.3836, r.Symmetric.High, 0.02 * 0.0755);
        Near.Absolute(1.0846, r.Shortest.Low, 0.04 * 0.0755);
        Near.Absolute(1.3838, r.Shortest.High, 0.04 * 0.0755);
    }

    [Theory]
    [InlineData(0.000, 0.0, 50e-6, 0, 150e-6)]
    [InlineData(0.010, 0.0, 150e-6, 0, 366e-6)]
    [InlineData(0.050, 0.0, 2550e-6, 1591e-6, 3547e-6)]
    [InlineData(0.000, 0.9, 50e-6, 0, 185e-6)]
    [InlineData(0.010, 0.9, 150e-6, 13e-6, 397e-6)]
    [InlineData(0.050, 0.9, 2550e-6, 1625e-6, 3554e-6)]
    public void ComparisonLoss(double x1, double r, double mean, double low, double high)
    {
        // 9.4: dY = X1^2 + X2^2, u = 0.005. Exact: mean x1^2 + 2u^2, variance 4u^2 x1^2 + 4u^4 (1 + r^2).
        const double U = 0.005;
        double u = Math.Sqrt(4 * U * U * x1 * x1 + 4 * U * U * U * U * (1 + r * r));
        var inputs = new InputSet(
            [InputQuantity.Normal("X1", x1, U), InputQuantity.Normal("X2", 0, U)],
            new[,]
            {
                { 1, r },
                { r, 1 },
            }
        );
        MonteCarloResult result = Run(inputs, x => x[0] * x[0] + x[1] * x[1]);
        Check(result, mean, u, 0.01);
        Near.Absolute(low, result.Shortest.Low, 0.06 * u);
        Near.Absolute(high, result.Shortest.High, 0.06 * u);
        Near.Absolute(2 * U * x1, inputs.Propagate(x => x[0] * x[0] + x[1] * x[1]).StandardUncertainty, 1e-9);
    }

    [Fact]
    public void GaugeBlock()
    {
        // 9.5 with 99 %: u 36 against 32 to first order; ten million trials gave 838.0, 35.81, shortest [744.3, 931.6].
        var inputs = new InputSet([
            InputQuantity.Student("ls", 50_000_623, 25, 18),
            InputQuantity.Student("D", 215, 6, 24),
            InputQuantity.Student("d1", 0, 4, 5),
            InputQuantity.Student("d2", 0, 7, 8),
            InputQuantity.Rectangular("as", 11.5e-6, 2e-6),
            InputQuantity.Normal("t0", -0.1, 0.2),
            InputQuantity.Arcsine("delta", 0, 0.5),
            InputQuantity.CurvilinearTrapezoid("da", 0, 1e-6, 0.1e-6),
            InputQuantity.CurvilinearTrapezoid("dt", 0, 0.05, 0.025),
        ]);
        MonteCarloResult r = inputs.MonteCarlo(
            x => x[0] + x[1] + x[2] + x[3] - x[0] * (x[7] * (x[5] + x[6]) + x[4] * x[8]) - 50_000_000,
            new MonteCarloOptions
            {
                Trials = Trials,
                Probability = 0.99,
                Seed = 4,
            }
        );
        Near.Absolute(838, r.Mean, 0.3);
        Near.Relative(35.81, r.StandardUncertainty, 0.006);
        Near.Absolute(744.3, r.Shortest.Low, 2.5);
        Near.Absolute(931.6, r.Shortest.High, 2.5);
    }

    [Fact]
    public void LogarithmOfARectangle()
    {
        // NPL DEM-ES-011 9.2, exact: mean -0.664900, sd 0.606227, shortest [ln 0.15, ln 1.1]; first order -0.5108,
        // 0.4811.
        var inputs = new InputSet([InputQuantity.Rectangular("x", 0.6, 0.5)]);
        MonteCarloResult r = Run(inputs, x => Math.Log(x[0]));
        Check(r, -0.664900, 0.606227, 0.006);
        Near.Absolute(Math.Log(0.15), r.Shortest.Low, 0.03);
        Near.Absolute(Math.Log(1.1), r.Shortest.High, 0.01);
        UncertaintyBudget first = inputs.Propagate(x => Math.Log(x[0]));
        Near.Relative(-0.510825624, first.Value, 1e-8);
        Near.Relative(0.481125224, first.StandardUncertainty, 1e-4);
    }

    [Fact]
    public void AdaptiveStopsWhenStableAndRepeatsItself()
    {
        var inputs = new InputSet([InputQuantity.Normal("a", 1, 0.3), InputQuantity.Rectangular("b", 2, 0.5)]);
        MonteCarloResult one = inputs.MonteCarlo(x => x[0] * x[1]),
            two = inputs.MonteCarlo(x => x[0] * x[1]);
        Assert.True(one.Stable);
        Assert.InRange(one.Trials, 20_000, 1_000_000);
        Assert.Equal(one, two);
        Near.Absolute(2, one.Mean, 0.01);
        MonteCarloResult rough = inputs.MonteCarlo(x => x[0] * x[1], new MonteCarloOptions { Digits = 1 });
        Assert.True(rough.Trials < one.Trials);
    }

    [Fact]
    public void AdaptiveSaysWhenItGaveUp()
    {
        var inputs = new InputSet([InputQuantity.Student("a", 0, 1, 3)]);
        MonteCarloResult r = inputs.MonteCarlo(x => x[0], new MonteCarloOptions { MostTrials = 20_000 });
        Assert.False(r.Stable);
        Assert.Equal(20_000, r.Trials);
    }

    [Fact]
    public void ToleranceIsHalfAUnitOfTheLastDigit()
    {
        // JCGM 101, 7.9.2: u = 0.00035 = 35 x 10^-5, so delta = 0.5 x 10^-5.
        Near.Relative(0.5e-5, MonteCarlo.Tolerance(0.00035, 2), 1e-12);
        Near.Relative(0.05, MonteCarlo.Tolerance(0.35, 1), 1e-12);
    }
}
