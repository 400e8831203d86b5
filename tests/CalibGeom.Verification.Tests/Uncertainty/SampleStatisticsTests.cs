using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Uncertainty;

/// <summary>NIST Statistical Reference Datasets, univariate, certified values.</summary>
public class SampleStatisticsTests
{
    private static readonly double[] Michelso =
    [
        299.85,
        299.74,
        299.90,
        300.07,
        299.93,
        299.85,
        299.95,
        299.98,
        299.98,
        299.88,
        300.00,
        299.98,
        299.93,
        299.65,
        299.76,
        299.81,
        300.00,
        300.00,
        299.96,
        299.96,
        299.96,
        299.94,
        299.96,
        299.94,
        299.88,
        299.80,
        299.85,
        299.88,
        299.90,
        299.84,
        299.83,
        299.79,
        299.81,
        299.88,
        299.88,
        299.83,
        299.80,
        299.79,
        299.76,
        299.80,
        299.88,
        299.88,
        299.88,
        299.86,
        299.72,
        299.72,
        299.62,
        299.86,
        299.97,
        299.95,
        299.88,
        299.91,
        299.85,
        299.87,
        299.84,
        299.84,
        299.85,
        299.84,
        299.84,
        299.84,
        299.89,
        299.81,
        299.81,
        299.82,
        299.80,
        299.77,
        299.76,
        299.74,
        299.75,
        299.76,
        299.91,
        299.92,
        299.89,
        299.86,
        299.88,
        299.72,
        299.84,
        299.85,
        299.85,
        299.78,
        299.89,
        299.84,
        299.78,
        299.81,
        299.76,
        299.81,
        299.79,
        299.81,
        299.82,
        299.85,
        299.87,
        299.87,
        299.81,
        299.74,
        299.81,
        299.94,
        299.95,
        299.80,
        299.81,
        299.87,
    ];
    private static readonly double[] Mavro =
    [
        2.00180,
        2.00170,
        2.00180,
        2.00190,
        2.00180,
        2.00170,
        2.00150,
        2.00140,
        2.00150,
        2.00150,
        2.00170,
        2.00180,
        2.00180,
        2.00190,
        2.00190,
        2.00210,
        2.00200,
        2.00160,
        2.00140,
        2.00130,
        2.00130,
        2.00150,
        2.00150,
        2.00160,
        2.00150,
        2.00140,
        2.00130,
        2.00140,
        2.00150,
        2.00140,
        2.00150,
        2.00160,
        2.00150,
        2.00160,
        2.00190,
        2.00200,
        2.00200,
        2.00210,
        2.00220,
        2.00230,
        2.00240,
        2.00250,
        2.00270,
        2.00260,
        2.00260,
        2.00260,
        2.00270,
        2.00260,
        2.00250,
        2.00240,
    ];

    [Fact]
    public void Michelson() =>
        Check(SampleStatistics.Of(Michelso), 299.8524, 0.0790105478190518, 0.535199668621283, 1e-12);

    [Fact]
    public void Mavrodineanu() =>
        Check(SampleStatistics.Of(Mavro), 2.001856, 0.000429123454003053, 0.937989183438248, 1e-11);

    [Fact]
    public void NumAcc4()
    {
        double[] values = new double[1001];
        values[0] = 10000000.2;
        for (int i = 1; i < 1001; i++)
            values[i] = i % 2 == 1 ? 10000000.1 : 10000000.3;
        // The data themselves are rounded to double; that limits the standard deviation to about 1e-8.
        Check(SampleStatistics.Of(values), 10000000.2, 0.1, -0.999, 1e-7);
    }

    [Fact]
    public void NothingAndNonsenseAreRefused()
    {
        Assert.Throws<ArgumentException>(() => SampleStatistics.Of([]));
        Assert.Throws<ArgumentException>(() => SampleStatistics.Of([1, double.NaN]));
    }

    private static void Check(SampleStatistics s, double mean, double deviation, double lag, double tolerance)
    {
        Near.Relative(mean, s.Mean, 1e-14);
        Near.Relative(deviation, s.StandardDeviation, tolerance);
        Near.Relative(lag, s.Autocorrelation, 10 * tolerance);
    }
}
