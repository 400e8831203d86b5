using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Uncertainty;

/// <summary>
/// Linear least squares, ordinary or generalised, by QR decomposition of the (whitened) design. For generalised least
/// squares the covariance of the observations is taken as known, and that of the coefficients follows from it; for
/// ordinary least squares it is estimated from the residuals. Immutable.
/// </summary>
public sealed class LeastSquares
{
    private LeastSquares(
        Vector<double> coefficients,
        Matrix<double> covariance,
        Vector<double> residuals,
        double weightedSquares
    )
    {
        Coefficients = coefficients.ToArray();
        Residuals = residuals.ToArray();
        SumOfSquares = weightedSquares;
        CovarianceMatrix = covariance;
    }

    /// <summary>The coefficients.</summary>
    public IReadOnlyList<double> Coefficients { get; }

    /// <summary>Observed less fitted, in the order of the observations.</summary>
    public IReadOnlyList<double> Residuals { get; }

    /// <summary>Sum of squared residuals; weighted by the inverse covariance when generalised.</summary>
    public double SumOfSquares { get; }

    /// <summary>Observations less coefficients.</summary>
    public int DegreesOfFreedom => Residuals.Count - Coefficients.Count;

    /// <summary>Residual standard deviation; of unit weight when generalised; 0 without degrees of freedom.</summary>
    public double ResidualStandardDeviation => DegreesOfFreedom > 0 ? Math.Sqrt(SumOfSquares / DegreesOfFreedom) : 0;

    private Matrix<double> CovarianceMatrix { get; }

    /// <summary>The covariance of two coefficients.</summary>
    /// <param name="i">Number of one coefficient, from 0.</param>
    /// <param name="j">Number of the other.</param>
    public double Covariance(int i, int j) => CovarianceMatrix[i, j];

    /// <summary>The standard uncertainty of a coefficient.</summary>
    /// <param name="i">Number of the coefficient, from 0.</param>
    public double StandardUncertainty(int i) => Math.Sqrt(CovarianceMatrix[i, i]);

    /// <summary>Ordinary least squares.</summary>
    /// <param name="design">One row an observation, one column a coefficient.</param>
    /// <param name="observations">The observations.</param>
    /// <exception cref="ArgumentException">The sizes do not fit, or the coefficients cannot all be told from these
    /// rows.</exception>
    public static LeastSquares Ordinary(double[,] design, IReadOnlyList<double> observations)
    {
        Matrix<double> x = Check(design, observations);
        return Solve(x, Vector<double>.Build.DenseOfEnumerable(observations), null);
    }

    /// <summary>Generalised least squares with a known covariance of the observations.</summary>
    /// <param name="design">One row an observation, one column a coefficient.</param>
    /// <param name="observations">The observations.</param>
    /// <param name="covariance">Their covariance, positive definite.</param>
    /// <exception cref="ArgumentException">The sizes do not fit, the covariance is not positive definite, or the
    /// coefficients cannot all be told.</exception>
    public static LeastSquares Generalised(double[,] design, IReadOnlyList<double> observations, double[,] covariance)
    {
        ArgumentNullException.ThrowIfNull(covariance);
        Matrix<double> x = Check(design, observations);
        if (covariance.GetLength(0) != observations.Count || covariance.GetLength(1) != observations.Count)
            throw new ArgumentException(
                $"covariance must be {observations.Count} by {observations.Count}.",
                nameof(covariance)
            );
        return Solve(
            x,
            Vector<double>.Build.DenseOfEnumerable(observations),
            Matrix<double>.Build.DenseOfArray(covariance)
        );
    }

    private static LeastSquares Solve(Matrix<double> x, Vector<double> y, Matrix<double>? covariance)
    {
        Matrix<double>? whitener = covariance is null ? null : Whitener(covariance);
        Matrix<double> design = whitener is null ? x : whitener * x;
        Vector<double> observed = whitener is null ? y : whitener * y;
        var qr = design.QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin);
        if (!FullRank(qr.R))
            throw new ArgumentException("The coefficients cannot all be told from these observations.", nameof(x));
        Matrix<double> inverse = qr.R.Inverse();
        Vector<double> coefficients = inverse * (qr.Q.Transpose() * observed);
        coefficients += inverse * (qr.Q.Transpose() * (observed - design * coefficients));
        Vector<double> weighted = observed - design * coefficients;
        double squares = weighted.DotProduct(weighted);
        Matrix<double> spread = inverse * inverse.Transpose();
        int free = y.Count - coefficients.Count;
        if (whitener is null)
            spread *= free > 0 ? squares / free : 0;
        return new LeastSquares(coefficients, spread, y - x * coefficients, squares);
    }

    internal static bool FullRank(Matrix<double> r)
    {
        double[] diagonal = r.Diagonal().Select(Math.Abs).ToArray();
        return diagonal.Length > 0 && diagonal.Min() > 1e-10 * diagonal.Max();
    }

    private static Matrix<double> Whitener(Matrix<double> covariance)
    {
        try
        {
            return covariance.Cholesky().Factor.Inverse();
        }
        catch (ArgumentException e)
        {
            throw new ArgumentException("covariance is not positive definite.", nameof(covariance), e);
        }
    }

    private static Matrix<double> Check(double[,] design, IReadOnlyList<double> observations)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(observations);
        if (
            design.GetLength(0) != observations.Count
            || design.GetLength(1) > observations.Count
            || design.GetLength(1) == 0
        )
            throw new ArgumentException(
                $"design must have {observations.Count} rows and from 1 to as many columns.",
                nameof(design)
            );
        if (observations.Any(v => !double.IsFinite(v)) || design.Cast<double>().Any(v => !double.IsFinite(v)))
            throw new ArgumentException("design and observations must be finite.", nameof(design));
        return Matrix<double>.Build.DenseOfArray(design);
    }
}
