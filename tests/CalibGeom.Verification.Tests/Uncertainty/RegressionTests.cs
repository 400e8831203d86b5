using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Uncertainty;

/// <summary>
/// Least squares against GUM H.3 and the NIST Statistical Reference Datasets (StRD), certified values.
/// </summary>
public class RegressionTests
{
    private static double[,] Line(double[] x, double shift = 0)
    {
        double[,] design = new double[x.Length, 2];
        for (int i = 0; i < x.Length; i++)
            (design[i, 0], design[i, 1]) = (1, x[i] - shift);
        return design;
    }

    [Fact]
    public void ThermometerCalibration()
    {
        // JCGM 100:2008 H.3: b = y1 + y2 (t - 20). Published y1 -0.1712 (0.0029), y2 0.00218 (0.00067), r -0.930, b(30)
        // -0.1494 (0.0041).
        double[] t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511];
        double[] b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160];
        LeastSquares fit = LeastSquares.Ordinary(Line(t, 20), b);
        Near.Relative(-0.17120379013135, fit.Coefficients[0], 1e-11);
        Near.Relative(0.00287759783515995, fit.StandardUncertainty(0), 1e-10);
        Near.Relative(0.00218269773988728, fit.Coefficients[1], 1e-10);
        Near.Relative(0.000667938773227832, fit.StandardUncertainty(1), 1e-10);
        Near.Relative(-1.78834074867392e-6, fit.Covariance(0, 1), 1e-10);
        Near.Relative(0.00349756396350528, fit.ResidualStandardDeviation, 1e-10);
        Near.Absolute(-0.00311609, fit.Residuals[0], 1e-8);
        Near.Absolute(0.00564915, fit.Residuals[3], 1e-8);
        Assert.Equal(9, fit.DegreesOfFreedom);
        double u30 = Math.Sqrt(fit.Covariance(0, 0) + 100 * fit.Covariance(1, 1) + 20 * fit.Covariance(0, 1));
        Near.Relative(-0.149376812732477, fit.Coefficients[0] + 10 * fit.Coefficients[1], 1e-10);
        Near.Relative(0.00413859575285495, u30, 1e-9);
    }

    [Fact]
    public void Norris()
    {
        // NIST StRD Norris, certified.
        double[] x =
        [
            0.2,
            337.4,
            118.2,
            884.6,
            10.1,
            226.5,
            666.3,
            996.3,
            448.6,
            777.0,
            558.2,
            0.4,
            0.6,
            775.5,
            666.9,
            338.0,
            447.5,
            11.6,
            556.0,
            228.1,
            995.8,
            887.6,
            120.2,
            0.3,
            0.3,
            556.8,
            339.1,
            887.2,
            999.0,
            779.0,
            11.1,
            118.3,
            229.2,
            669.1,
            448.9,
            0.5,
        ];
        double[] y =
        [
            0.1,
            338.8,
            118.1,
            888.0,
            9.2,
            228.1,
            668.5,
            998.5,
            449.1,
            778.9,
            559.2,
            0.3,
            0.1,
            778.1,
            668.8,
            339.3,
            448.9,
            10.8,
            557.7,
            228.3,
            998.0,
            888.8,
            119.6,
            0.3,
            0.6,
            557.6,
            339.3,
            888.0,
            998.5,
            778.9,
            10.2,
            117.6,
            228.9,
            668.4,
            449.2,
            0.2,
        ];
        LeastSquares fit = LeastSquares.Ordinary(Line(x), y);
        Near.Relative(-0.262323073774029, fit.Coefficients[0], 1e-11);
        Near.Relative(0.232818234301152, fit.StandardUncertainty(0), 1e-11);
        Near.Relative(1.00211681802045, fit.Coefficients[1], 1e-13);
        Near.Relative(0.429796848199937e-3, fit.StandardUncertainty(1), 1e-11);
        Near.Relative(0.884796396144373, fit.ResidualStandardDeviation, 1e-11);
        // Exact by rational arithmetic; a value in a well-known library's tests is good to 3e-11 only.
        Near.Relative(-7.74327536315644e-05, fit.Covariance(0, 1), 1e-11);
    }

    [Fact]
    public void NoInt1ThroughTheOrigin()
    {
        // NIST StRD NoInt1, certified.
        double[,] design = new double[11, 1];
        double[] y = new double[11];
        for (int i = 0; i < 11; i++)
            (design[i, 0], y[i]) = (60 + i, 130 + i);
        LeastSquares fit = LeastSquares.Ordinary(design, y);
        Near.Relative(2.07438016528926, fit.Coefficients[0], 1e-13);
        Near.Relative(0.165289256198347e-01, fit.StandardUncertainty(0), 1e-12);
        Near.Relative(3.56753034006338, fit.ResidualStandardDeviation, 1e-12);
        Near.Relative(127.272727272727, fit.SumOfSquares, 1e-12);
    }

    [Fact]
    public void GeneralisedWithEqualIndependentErrorsIsOrdinary()
    {
        double[] x = [1, 2, 4, 7],
            y = [1.1, 1.9, 4.2, 6.8];
        double[,] v = new double[4, 4];
        for (int i = 0; i < 4; i++)
            v[i, i] = 0.04;
        LeastSquares known = LeastSquares.Generalised(Line(x), y, v),
            ordinary = LeastSquares.Ordinary(Line(x), y);
        Near.Relative(ordinary.Coefficients[1], known.Coefficients[1], 1e-12);
        double ratio = 0.04 / (ordinary.ResidualStandardDeviation * ordinary.ResidualStandardDeviation);
        Near.Relative(ordinary.Covariance(1, 1) * ratio, known.Covariance(1, 1), 1e-12);
    }

    [Fact]
    public void CoefficientsThatCannotBeToldAreRefused()
    {
        double[,] twice =
        {
            { 1, 1 },
            { 2, 2 },
            { 3, 3 },
        };
        Assert.Throws<ArgumentException>(() => LeastSquares.Ordinary(twice, [1, 2, 3]));
        Assert.Throws<ArgumentException>(() => LeastSquares.Ordinary(new double[2, 2], [1, 2, 3]));
        Assert.Throws<ArgumentException>(() =>
            LeastSquares.Generalised(
                Line([1, 2]),
                [1, 2],
                new double[,]
                {
                    { 1, 2 },
                    { 2, 1 },
                }
            )
        );
    }
}
