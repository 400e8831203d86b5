using CalibGeom.Verification.Tuning.Regression;

namespace CalibGeom.Verification.Tests.Tuning.Regression;

/// <summary>
/// NIST StRD, nonlinear regression (CHECKS.md 6.5, READ): certified values from both published starts.
/// </summary>
public class LeastSquaresTests
{
    public static TheoryData<string, double[]> Starts =>
        new()
        {
            { "Misra1a", [500, 0.0001] },
            { "Misra1a", [250, 0.0005] },
            { "DanWood", [1, 5] },
            { "DanWood", [0.7, 4] },
            { "BoxBOD", [1, 1] },
            { "BoxBOD", [100, 0.75] },
            { "Chwirut2", [0.1, 0.01, 0.02] },
            { "Chwirut2", [0.15, 0.008, 0.010] },
        };

    [Theory]
    [MemberData(nameof(Starts))]
    public void CertifiedValuesAreFound(string name, double[] start)
    {
        NistProblem problem = NistProblem.Named(name);
        LeastSquaresFit fit = LeastSquares.Minimise(problem.Residuals, start);
        Assert.True(fit.Converged);
        for (int k = 0; k < start.Length; k++)
        {
            Assert.Equal(1, fit.Parameters[k] / problem.Certified[k], 1e-6);
            Assert.Equal(1, fit.StandardError(k) / problem.Deviations[k], 1e-5);
        }
        Assert.Equal(1, fit.SumOfSquares / problem.SumOfSquares, 1e-8);
        Assert.Equal(problem.X.Length - start.Length, fit.DegreesOfFreedom);
    }

    [Fact]
    public void APriorIsOneMoreResidual()
    {
        // A mean of n readings of deviation s with a prior: the textbook weighted mean.
        double[] readings = [1.0, 1.2, 1.4];
        LeastSquaresFit fit = LeastSquares.Minimise(
            p => [.. readings.Select(r => (r - p[0]) / 0.1), (p[0] - 2) / 0.05],
            [0]
        );
        double weight = 3 / 0.01 + 1 / 0.0025;
        Assert.Equal((3.6 / 0.01 + 2 / 0.0025) / weight, fit.Parameters[0], 1e-9);
        Assert.Equal(1 / weight, fit.Covariance[0, 0], 1e-9);
    }

    [Fact]
    public void AModelThatBreaksDownOnTheWayIsSurvived()
    {
        LeastSquaresFit fit = LeastSquares.Minimise(p => [Math.Log(p[0]) - 1], [0.05]);
        Assert.Equal(Math.E, fit.Parameters[0], 1e-8);
    }
}
