using CalibGeom.Verification.Tests.Uncertainty;
using CalibGeom.Verification.Trends.Charts;

namespace CalibGeom.Verification.Tests.Trends;

/// <summary>Charts against the NIST e-Handbook and textbook data.</summary>
public class ChartTests
{
    [Fact]
    public void IndividualsOfTheHandbook()
    {
        // NIST e-Handbook 6.3.2.2 (read in a transcription): mean 50.81, mean range 1.8778, limits 45.8159 and 55.8041
        // with d2 rounded to 1.128; 55.80241168005 with d2 = 2 / sqrt(pi).
        IndividualsChart chart = IndividualsChart.Of([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]);
        Near.Absolute(50.81, chart.Limits.Centre, 1e-9);
        Near.Absolute(1.87777777777778, chart.MeanRange, 1e-12);
        Near.Absolute(55.80241168005, chart.Limits.High, 1e-9);
        Near.Absolute(45.81758831995, chart.Limits.Low, 1e-9);
        Near.Absolute(55.8041, chart.Limits.Centre + 3 * chart.MeanRange / 1.128, 5e-5);
        Near.Absolute(6.1347, chart.RangeLimits.High, 1e-3);
        double[] ranges = [2.0, 2.3, 1.4, 3.5, 3.4, 1.4, 0.2, 1.2, 1.5];
        Assert.Equal(ranges, chart.MovingRanges.Select(r => Math.Round(r, 9)));
        Assert.DoesNotContain(chart.Values, chart.Limits.Signals);
    }

    [Fact]
    public void ConstantsOfTwoValues()
    {
        // d2, d3 and D4 for n = 2: 1.128379, 0.852502, 3.2665 (computed; equal to published tables).
        Near.Absolute(1.128379, IndividualsChart.D2, 1e-6);
        Near.Absolute(3.2665, IndividualsChart.D4, 5e-5);
        Near.Absolute(0.852502, (IndividualsChart.D4 - 1) * IndividualsChart.D2 / 3, 1e-6);
    }

    [Fact]
    public void AverageOfTheHandbook()
    {
        // NIST e-Handbook 6.3.2.4 (read in a transcription): lambda 0.3, start 50, s 2.0539; limits 52.5884 and 47.4115
        // (the page truncates 47.411568); no signal.
        double[] x =
        [
            52.0,
            47.0,
            53.0,
            49.3,
            50.1,
            47.0,
            51.0,
            50.1,
            51.2,
            50.5,
            49.6,
            47.6,
            49.9,
            51.3,
            47.8,
            51.2,
            52.6,
            52.4,
            53.6,
            52.1,
        ];
        double[] printed =
        [
            50.60,
            49.52,
            50.56,
            50.18,
            50.16,
            49.21,
            49.75,
            49.85,
            50.26,
            50.33,
            50.11,
            49.36,
            49.52,
            50.05,
            49.38,
            49.92,
            50.73,
            51.23,
            51.94,
            51.99,
        ];
        var chart = new EwmaChart(x, 50, 2.0539, 0.3, 3);
        foreach ((double expected, double actual) in printed.Zip(chart.Averages))
            Near.Absolute(expected, actual, 5.001e-3);
        Near.Absolute(51.988243, chart.Averages[^1], 1e-6);
        Near.Absolute(52.5884317381266, chart.Settled.High, 1e-9);
        Near.Absolute(47.4115682618734, chart.Settled.Low, 1e-9);
        Assert.Null(chart.FirstSignal);
    }

    [Fact]
    public void SumsOfTheHandbook()
    {
        // NIST e-Handbook 6.3.2.3 (read in a transcription): target 325, k 0.3175, h 4.1959; first signal at point 14.
        double[] x =
        [
            324.925,
            324.675,
            324.725,
            324.350,
            325.350,
            325.225,
            324.125,
            324.525,
            325.225,
            324.600,
            324.625,
            325.150,
            328.325,
            327.250,
            327.825,
            328.500,
            326.675,
            327.775,
            326.875,
            328.350,
        ];
        var chart = new CusumChart(x, 325, 0.3175, 4.1959);
        double[] high =
        [
            0,
            0,
            0,
            0,
            0.0325,
            0,
            0,
            0,
            0,
            0,
            0,
            0,
            3.0075,
            4.94,
            7.4475,
            10.63,
            11.9875,
            14.4450,
            16.0025,
        ];
        double[] low = [0, 0.0075, 0, 0.3325, 0, 0, 0.5575, 0.7150, 0.1725, 0.2550, 0.3125, 0];
        foreach ((double expected, double actual) in high.Zip(chart.High))
            Near.Absolute(expected, actual, 1e-9);
        foreach ((double expected, double actual) in low.Zip(chart.Low))
            Near.Absolute(expected, actual, 1e-9);
        Near.Absolute(19.0350, chart.High[^1], 1e-9);
        Assert.Equal(13, chart.FirstSignal);
    }

    private static readonly double[] Montgomery =
    [
        9.45,
        7.99,
        9.29,
        11.66,
        12.16,
        10.18,
        8.04,
        11.46,
        9.20,
        10.34,
        9.03,
        11.47,
        10.51,
        9.40,
        10.08,
        9.37,
        10.62,
        10.31,
        8.52,
        10.84,
        10.90,
        9.33,
        12.29,
        11.50,
        10.60,
        11.08,
        10.38,
        11.62,
        11.31,
        10.52,
    ];

    [Fact]
    public void SumsOfMontgomery()
    {
        // Data of Montgomery, Statistical Quality Control (read in a library's manual that cites p. 428); K 0.5, H 5:
        // first above 5 at point 29 with 5.28 after 7 points, so the shift began after 22, mean 11.254 (computed).
        var chart = new CusumChart(Montgomery, 10);
        Assert.Equal(28, chart.FirstSignal);
        Near.Absolute(5.28, chart.High[28], 1e-9);
        Assert.Equal(21, chart.LastBefore(28));
        Near.Absolute(11.254, chart.MeanSince(28), 5e-4);
        Near.Absolute(1.77, chart.Low.Max(), 1e-9);
        Assert.Equal(2, chart.Low.ToList().IndexOf(chart.Low.Max()));
    }

    [Fact]
    public void AverageOfMontgomery()
    {
        // The same data, lambda 0.1, L 2.7, limits that know how few points came before (computed): 10.27 and 9.73 at
        // the first point, 10.36325 at the second, 10.61887 at the end; first outside at point 29.
        var chart = new EwmaChart(Montgomery, 10, 1, 0.1, 2.7);
        Near.Absolute(10.27, chart.At(0).High, 1e-9);
        Near.Absolute(10.36325, chart.At(1).High, 5e-6);
        Near.Absolute(9.63675, chart.At(1).Low, 5e-6);
        Near.Absolute(10.61887, chart.At(29).High, 5e-4);
        Near.Absolute(10.57314, chart.Averages[27], 5e-6);
        Near.Absolute(10.64682, chart.Averages[28], 5e-6);
        Near.Absolute(10.63414, chart.Averages[29], 5e-6);
        Assert.Equal(28, Enumerable.Range(0, 30).First(i => chart.At(i).Signals(chart.Averages[i])));
    }

    [Fact]
    public void SumsOfMontgomeryAndRunger()
    {
        // Montgomery and Runger, Example 16-6 (read): target 99, K 1, H 10; never above H.
        double[] x =
        [
            102.0,
            94.8,
            98.3,
            98.4,
            102.0,
            98.5,
            99.0,
            97.7,
            100.0,
            98.1,
            101.3,
            98.7,
            101.1,
            98.4,
            97.0,
            96.7,
            100.3,
            101.4,
            97.2,
            101.0,
        ];
        double[] high = [2.0, 0, 0, 0, 2.0, 0.5, 0, 0, 0, 0, 1.3, 0, 1.1, 0, 0, 0, 0.3, 1.7, 0, 1.0];
        double[] low = [0, 3.2, 2.9, 2.5, 0, 0, 0, 0.3, 0, 0, 0, 0, 0, 0, 1.0, 2.3, 0, 0, 0.8, 0];
        var chart = new CusumChart(x, 99, 1, 10);
        Assert.Equal(high, chart.High.Select(v => Math.Round(v, 9)));
        Assert.Equal(low, chart.Low.Select(v => Math.Round(v, 9)));
        Assert.Null(chart.FirstSignal);
        Assert.Equal(19, new CusumChart(x, 99, 1, 0.9).LastBefore(19) + 1);
    }

    [Fact]
    public void BadNumbersAreRefused()
    {
        Assert.Throws<ArgumentException>(() => IndividualsChart.Of([1.0]));
        Assert.Throws<ArgumentException>(() => IndividualsChart.Of([1, double.NaN]));
        Assert.Throws<ArgumentException>(() => new EwmaChart([1], deviation: 0));
        Assert.Throws<ArgumentException>(() => new EwmaChart([1], weight: 1.1));
        Assert.Throws<ArgumentException>(() => new CusumChart([1], limit: 0));
        Assert.Throws<ArgumentException>(() => new CusumChart([1], allowance: -1));
    }
}
