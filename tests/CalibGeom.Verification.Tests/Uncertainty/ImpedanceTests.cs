using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Uncertainty;

/// <summary>
/// JCGM 100:2008 (GUM) H.2, simultaneous resistance and reactance: both approaches. Data of table H.2; finer digits
/// recomputed independently.
/// </summary>
public class ImpedanceTests
{
    private static readonly double[] Volts = [5.007, 4.994, 5.005, 4.990, 4.999];
    private static readonly double[] Amperes = [19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3];
    private static readonly double[] Phase = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
    private static readonly InputSet Means = InputSet.Of(["V", "I", "phi"], [Volts, Amperes, Phase]);

    private static double Resistance(double[] x) => x[0] * Math.Cos(x[2]) / x[1];

    private static double Reactance(double[] x) => x[0] * Math.Sin(x[2]) / x[1];

    private static double Impedance(double[] x) => x[0] / x[1];

    private static double Correlation(Func<double[], double> a, Func<double[], double> b) =>
        Means.Covariance(a, b) / Math.Sqrt(Means.Covariance(a, a) * Means.Covariance(b, b));

    [Fact]
    public void TheMeansHaveTheComputedUncertaintiesAndCorrelations()
    {
        double[] u = Means.Inputs.Select(q => q.StandardUncertainty).ToArray();
        Near.Relative(0.003209361307, u[0], 1e-9);
        Near.Relative(9.471008394e-6, u[1], 1e-9);
        Near.Relative(0.0007520638271, u[2], 1e-9);
        Near.Relative(-0.3553112198, Correlation(x => x[0], x => x[1]), 1e-9);
        Near.Relative(0.8576242108, Correlation(x => x[0], x => x[2]), 1e-9);
        Near.Relative(-0.6451112177, Correlation(x => x[1], x => x[2]), 1e-9);
    }

    [Fact]
    public void ApproachOneMeansWithTheirCorrelations()
    {
        Check(Resistance, 127.732169928, 0.071071407397, 127.732, 0.071);
        Check(Reactance, 219.846511913, 0.295581677359, 219.847, 0.2956);
        Check(Impedance, 254.259701948, 0.236336130082, 254.260, 0.236);
        Near.Relative(-0.5884297844, Correlation(Resistance, Reactance), 1e-8);
        Near.Relative(-0.4852592242, Correlation(Resistance, Impedance), 1e-8);
        Near.Relative(0.9925116489, Correlation(Reactance, Impedance), 1e-8);
    }

    [Fact]
    public void LeavingTheCorrelationsOutGivesTheWrongUncertaintyOfTheGuidesWarning()
    {
        var independent = new InputSet(Means.Inputs);
        Near.Relative(0.194544454489, independent.Propagate(Resistance).StandardUncertainty, 1e-8);
        Near.Relative(0.200909305928, independent.Propagate(Reactance).StandardUncertainty, 1e-8);
        Near.Relative(0.204076425447, independent.Propagate(Impedance).StandardUncertainty, 1e-8);
    }

    [Fact]
    public void ApproachTwoResultsOfEachSet()
    {
        double[][] results = new Func<double[], double>[] { Resistance, Reactance, Impedance }
            .Select(f => Volts.Select((v, k) => f([v, Amperes[k], Phase[k]])).ToArray())
            .ToArray();
        InputSet sets = InputSet.Of(["R", "X", "Z"], results);
        double[] value = [127.731630483, 219.846894603, 254.260049587];
        double[] u = [0.07127354318, 0.2954890856, 0.2362475017];
        for (int i = 0; i < 3; i++)
        {
            Near.Relative(value[i], sets.Inputs[i].Value, 1e-11);
            Near.Relative(u[i], sets.Inputs[i].StandardUncertainty, 1e-9);
        }
        double r = sets.Covariance(x => x[0], x => x[1]) / (u[0] * u[1]);
        Near.Relative(-0.5882768558, r, 1e-8);
    }

    private static void Check(Func<double[], double> model, double value, double u, double published, double publishedU)
    {
        UncertaintyBudget result = Means.Propagate(model);
        Near.Relative(value, result.Value, 1e-11);
        Near.Relative(u, result.StandardUncertainty, 1e-8);
        Near.Absolute(published, result.Value, 1e-3);
        Near.Absolute(publishedU, result.StandardUncertainty, 1e-3);
        Assert.Equal(4, result.DegreesOfFreedom);
    }
}
