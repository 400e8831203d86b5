using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Uncertainty;

/// <summary>
/// JCGM 100:2008 (GUM) H.1, end-gauge calibration. Inputs as printed there; published results are the rounded ones, the
/// finer digits were recomputed independently with 30-digit arithmetic.
/// </summary>
public class EndGaugeTests
{
    private static readonly InputSet Difference = new([
        InputQuantity.Normal("d0", 215, 5.8, 24, Evaluation.A),
        InputQuantity.Normal("d1", 0, 3.9, 5),
        InputQuantity.Normal("d2", 0, 6.7, 8),
    ]);

    private static InputSet Inputs(UncertaintyBudget d) =>
        new([
            InputQuantity.Normal("ls", 50_000_623, 25, 18),
            InputQuantity.Normal("d", d.Value, d.StandardUncertainty, d.DegreesOfFreedom, Evaluation.A),
            InputQuantity.Rectangular("as", 11.5e-6, 2e-6),
            InputQuantity.Rectangular("da", 0, 1e-6, 50),
            InputQuantity.Rectangular("dt", 0, 0.05, 2),
            InputQuantity.Normal("t", -0.1, 0.2),
            InputQuantity.Arcsine("delta", 0, 0.5),
        ]);

    private static double Length(double[] x) => x[0] + x[1] - x[0] * (x[3] * (x[5] + x[6]) + x[2] * x[4]);

    [Fact]
    public void TheDifferenceHasTheComputedUncertainty()
    {
        UncertaintyBudget d = Difference.Propagate(x => x[0] + x[1] + x[2]);
        Near.Relative(9.681941954, d.StandardUncertainty, 1e-8);
        Near.Relative(25.447251, d.DegreesOfFreedom, 1e-7);
    }

    [Fact]
    public void TheLengthHasThePublishedUncertainty()
    {
        UncertaintyBudget l = Inputs(Difference.Propagate(x => x[0] + x[1] + x[2])).Propagate(Length);
        Assert.Equal(50_000_838, l.Value, 6);
        Near.Relative(31.66387911, l.StandardUncertainty, 1e-8);
        Near.Relative(16.751856, l.DegreesOfFreedom, 1e-6);
        double[] contributions = l.Components.Select(c => c.Contribution).ToArray();
        double[] computed = [25, 9.681941954, 0, 2.886787315, 16.59902706];
        // as has no first-order effect; dt's sensitivity is -ls as; da's is -ls times the mean temperature difference.
        Near.Relative(computed[0], contributions[0], 1e-6);
        Near.Relative(computed[1], contributions[1], 1e-8);
        Near.Absolute(computed[2], contributions[2], 1e-6);
        Near.Relative(computed[3], contributions[3], 1e-6);
        Near.Relative(computed[4], contributions[4], 1e-6);
        // Published: u 32 nm, 16 degrees of freedom, U99 93 nm with the degrees of freedom truncated (GUM H.1.6).
        Assert.Equal(32, Math.Round(l.StandardUncertainty));
        Assert.Equal(16, Math.Floor(l.DegreesOfFreedom));
        Near.Absolute(93, Coverage.StudentFactor(16, 0.99) * 32, 0.6);
    }

    [Fact]
    public void SecondOrderTermsAddWhatTheGuideSays()
    {
        double u = Inputs(Difference.Propagate(x => x[0] + x[1] + x[2])).SecondOrderUncertainty(Length);
        Near.Relative(33.80654543, u, 1e-7);
        Assert.Equal(34, Math.Round(u));
    }

    [Fact]
    public void StudentsFactorForSixteenDegreesOfFreedom() =>
        Near.Relative(2.92078162235, Coverage.StudentFactor(16, 0.99), 1e-10);
}
