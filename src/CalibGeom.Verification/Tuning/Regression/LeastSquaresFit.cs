using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Tuning.Regression;

/// <summary>The minimum of a sum of squares.</summary>
/// <param name="Parameters">Where it lies.</param>
/// <param name="Curvature">J'J there: its inverse is the covariance when each residual is divided by its standard
/// deviation.</param>
/// <param name="SumOfSquares">Its value.</param>
/// <param name="Residuals">The residuals there.</param>
/// <param name="Converged">Whether the search ended by itself.</param>
internal sealed record LeastSquaresFit(
    double[] Parameters,
    Matrix<double> Curvature,
    double SumOfSquares,
    double[] Residuals,
    bool Converged
)
{
    /// <summary>Residuals less parameters.</summary>
    internal int DegreesOfFreedom => Residuals.Length - Parameters.Length;

    /// <summary>The standard deviation of a residual estimated from the residuals.</summary>
    internal double ResidualDeviation => Math.Sqrt(SumOfSquares / DegreesOfFreedom);

    /// <summary>The covariance when residuals are in units of their standard deviation.</summary>
    internal Matrix<double> Covariance => Curvature.Inverse();

    /// <summary>
    /// The standard error of a parameter when the residuals' standard deviation is estimated from them.
    /// </summary>
    internal double StandardError(int parameter) => ResidualDeviation * Math.Sqrt(Covariance[parameter, parameter]);
}
