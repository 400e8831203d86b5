using CalibGeom.Verification.Uncertainty;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.Uncertainty;

public class BudgetTests
{
    [Fact]
    public void TenKilogramWeight()
    {
        // EA-4/02 M:2013 S2, as worked at metrodata.de: u 29.1465131827805 mg, U 58 mg with k = 2, indices
        // 59.6/8.8/23.7/3.9/3.9 %.
        var inputs = new InputSet([
            InputQuantity.Normal("standard", 10_000_005, 22.5),
            InputQuantity.Rectangular("drift", 0, 15),
            InputQuantity.Normal("difference", 20, 14.2, evaluation: Evaluation.A),
            InputQuantity.Rectangular("eccentricity", 0, 10),
            InputQuantity.Rectangular("buoyancy", 0, 10),
        ]);
        UncertaintyBudget b = inputs.Propagate(x => x.Sum());
        Assert.Equal(10_000_025, b.Value, 6);
        // The type A input is printed rounded to 14.2 mg, which moves the fourth digit.
        Near.Absolute(29.1465131827805, b.StandardUncertainty, 1e-3);
        Assert.Equal(58, Math.Round(2 * b.StandardUncertainty));
        double[] shares = [59.6, 8.8, 23.7, 3.9, 3.9];
        for (int i = 0; i < 5; i++)
            Near.Absolute(shares[i], b.Components[i].Share * 100, 0.06);
    }

    [Fact]
    public void VernierCaliper()
    {
        // EA-4/02 M:2013 S10 (from memory; arithmetic recomputed): 33 um, trapezoid with beta 0.33, k 1.83, U 0.06 mm.
        var inputs = new InputSet([
            InputQuantity.Rectangular("gauge block", 0, 0.8),
            InputQuantity.Normal("temperature", 0, 2.0),
            InputQuantity.Rectangular("resolution", 0, 25),
            InputQuantity.Rectangular("mechanical", 0, 50),
        ]);
        double u = inputs.Propagate(x => x.Sum()).StandardUncertainty;
        // Published with its contributions rounded up to 15 and 29 um; unrounded ones give 32.34.
        Near.Absolute(33, u, 1);
        Near.Absolute(32.34, u, 0.01);
        double k = Coverage.TrapezoidalFactor(1.0 / 3);
        Near.Relative(1.83389205917, k, 1e-10);
        Near.Absolute(0.06, k * u / 1000, 0.002);
    }

    [Fact]
    public void SmallDegreesOfFreedom()
    {
        Near.Absolute(12.8, Coverage.EffectiveDegreesOfFreedom([(0.57, 9), (0.25, double.PositiveInfinity)]), 0.1);
        // Inputs are printed rounded, which moves the last digits. Ratio of intensities times a standard: 0.6967, u
        // 0.00494, 27.7 degrees of freedom, U95 0.0101 (worked example of a public uncertainty calculator).
        UncertaintyBudget b = new InputSet([
            InputQuantity.Student("X1", 0.1820, 0.00093, 9),
            InputQuantity.Student("X2", 0.1823, 0.00058, 19),
            InputQuantity.Student("Yu", 0.6978, 0.0026, 19),
        ]).Propagate(x => x[0] / x[1] * x[2]);
        Near.Absolute(0.6967, b.Value, 5e-5);
        Near.Absolute(0.00494, b.StandardUncertainty, 1e-5);
        Near.Absolute(27.7, b.DegreesOfFreedom, 0.25);
        Near.Absolute(0.0101, b.Expanded(), 5e-5);
    }

    [Fact]
    public void CaliperOfCommonMake()
    {
        // MPE 0.02 rectangular, step 0.01, five repeats of 0.008: 0.0124284620 mm (recomputed).
        UncertaintyBudget b = new InputSet([
            InputQuantity.Rectangular("mpe", 0, 0.02),
            InputQuantity.Rectangular("step", 0, 0.005),
            InputQuantity.Normal("repeats", 8, 0.008 / Math.Sqrt(5)),
        ]).Propagate(x => x.Sum());
        Near.Relative(0.0124284620, b.StandardUncertainty, 1e-8);
    }

    [Property(MaxTest = 100)]
    public bool SharesAddUpToOne(short a, short b, byte r)
    {
        double rho = (r - 127) / 130.0;
        var inputs = new InputSet(
            [InputQuantity.Normal("a", a / 100.0, 0.3), InputQuantity.Normal("b", b / 100.0, 0.5)],
            new[,]
            {
                { 1, rho },
                { rho, 1 },
            }
        );
        UncertaintyBudget budget = inputs.Propagate(x => 2 * x[0] + x[1] * x[1] / 50 + x[1]);
        return Math.Abs(budget.Components.Sum(c => c.Share) - 1) < 1e-9;
    }

    [Fact]
    public void TheTableNamesEveryComponent()
    {
        UncertaintyBudget b = new InputSet([
            InputQuantity.Rectangular("outside jaws", 0, 0.02),
            InputQuantity.Normal("repeats", 8, 0.004, 7, Evaluation.A),
        ]).Propagate(x => x.Sum());
        string[] lines = b.ToText().TrimEnd('\n').Split('\n');
        Assert.Equal(3, lines.Length);
        Assert.StartsWith("outside jaws", lines[1], StringComparison.Ordinal);
        Assert.Contains("rectangular", lines[1], StringComparison.Ordinal);
        Assert.Contains("A ", lines[2], StringComparison.Ordinal);
    }

    [Fact]
    public void NonsenseIsRefused()
    {
        Assert.Throws<ArgumentException>(() => InputQuantity.Normal("", 0, 1));
        Assert.Throws<ArgumentException>(() => InputQuantity.Normal("a", double.NaN, 1));
        Assert.Throws<ArgumentException>(() => InputQuantity.Normal("a", 0, -1));
        Assert.Throws<ArgumentException>(() => InputQuantity.Student("a", 0, 1, 0));
        Assert.Throws<ArgumentException>(() => InputQuantity.Trapezoidal("a", 0, 1, 1.5));
        Assert.Throws<ArgumentException>(() => InputQuantity.CurvilinearTrapezoid("a", 0, 1, 2));
        Assert.Throws<ArgumentException>(() => InputQuantity.Of("a", [1]));
        Assert.Throws<ArgumentException>(() => new InputSet([]));
        InputQuantity[] two = [InputQuantity.Normal("a", 0, 1), InputQuantity.Rectangular("b", 0, 1)];
        Assert.Throws<ArgumentException>(() =>
            new InputSet(
                two,
                new[,]
                {
                    { 1, 1.2 },
                    { 1.2, 1 },
                }
            )
        );
        Assert.Throws<ArgumentException>(() => new InputSet(two, new double[1, 1]));
        var correlated = new InputSet(
            two,
            new[,]
            {
                { 1, 0.5 },
                { 0.5, 1 },
            }
        );
        Assert.Throws<InvalidOperationException>(() => correlated.MonteCarlo(x => x[0]));
        Assert.Throws<InvalidOperationException>(() => correlated.SecondOrderUncertainty(x => x[0]));
        Assert.Throws<ArithmeticException>(() => new InputSet(two).Propagate(x => Math.Sqrt(-1 - x[0] * x[0])));
        Assert.Throws<ArgumentException>(() =>
            new InputSet(two).MonteCarlo(x => x[0], new MonteCarloOptions { Trials = 10 })
        );
        Assert.Throws<ArgumentException>(() => Coverage.StudentFactor(5, 1));
    }

    [Theory]
    [InlineData(InputShape.Triangular)]
    [InlineData(InputShape.Trapezoidal)]
    [InlineData(InputShape.CurvilinearTrapezoid)]
    [InlineData(InputShape.Arcsine)]
    public void DrawsHaveTheStatedUncertainty(InputShape shape)
    {
        InputQuantity q = shape switch
        {
            InputShape.Triangular => InputQuantity.Triangular("q", 1, 2),
            InputShape.Trapezoidal => InputQuantity.Trapezoidal("q", 1, 2, 0.4),
            InputShape.CurvilinearTrapezoid => InputQuantity.CurvilinearTrapezoid("q", 1, 2, 0.7),
            _ => InputQuantity.Arcsine("q", 1, 2),
        };
        MonteCarloResult r = new InputSet([q]).MonteCarlo(x => x[0], new MonteCarloOptions { Trials = 100_000 });
        Near.Relative(q.StandardUncertainty, r.StandardUncertainty, 0.01);
        Near.Absolute(1, r.Mean, 0.02);
    }
}
