using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Uncertainty;

/// <summary>Correlation coefficients and the matrices made of them.</summary>
internal static class CorrelationCheck
{
    private const double Nearly = 1e-9;

    internal static double Coefficient(IReadOnlyList<double> a, IReadOnlyList<double> b)
    {
        double meanA = SampleStatistics.Of(a).Mean,
            meanB = SampleStatistics.Of(b).Mean;
        double ab = 0,
            aa = 0,
            bb = 0;
        for (int i = 0; i < a.Count; i++)
        {
            ab += (a[i] - meanA) * (b[i] - meanB);
            aa += (a[i] - meanA) * (a[i] - meanA);
            bb += (b[i] - meanB) * (b[i] - meanB);
        }
        return aa > 0 && bb > 0 ? ab / Math.Sqrt(aa * bb) : 0;
    }

    internal static Matrix<double> Matrix(double[,] correlation, int size)
    {
        if (correlation.GetLength(0) != size || correlation.GetLength(1) != size)
            throw new ArgumentException($"correlation must be {size} by {size}.", nameof(correlation));
        for (int i = 0; i < size; i++)
        for (int j = 0; j < size; j++)
            if (
                !(Math.Abs(correlation[i, j] - correlation[j, i]) < Nearly && Math.Abs(correlation[i, j]) <= 1 + Nearly)
                || Math.Abs(correlation[i, i] - 1) > Nearly
            )
                throw new ArgumentException(
                    "correlation must be symmetric, with ones on the diagonal and values from -1 to 1.",
                    nameof(correlation)
                );
        Matrix<double> matrix = Matrix<double>.Build.DenseOfArray(correlation);
        if (matrix.Evd(Symmetricity.Symmetric).EigenValues.Min(v => v.Real) < -Nearly)
            throw new ArgumentException(
                "correlation is not positive semidefinite: no quantities can be correlated in this way.",
                nameof(correlation)
            );
        return matrix;
    }

    /// <summary>
    /// A lower triangular factor; a trace is added to the diagonal so that fully correlated inputs have one too.
    /// </summary>
    internal static Matrix<double> Factor(Matrix<double> correlation) =>
        (correlation + Matrix<double>.Build.DenseIdentity(correlation.RowCount) * 1e-12).Cholesky().Factor;
}
