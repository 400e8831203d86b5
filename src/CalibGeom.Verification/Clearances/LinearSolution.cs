using CalibGeom.Verification.Uncertainty;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// Generalised least squares with a covariance B + G G'. With B = L L' it is the ordinary one of L^-1 (y - X b - G e)
/// and e together, e being the shared errors in units of their uncertainties (Henderson, 1975), by one QR decomposition
/// of (L^-1 G, L^-1 X; I, 0) = (Qg, Qx) R: V^-1 = L'^-1 (I - Qg Qg') L^-1, over the rows of observations.
/// </summary>
internal sealed class LinearSolution
{
    private readonly double[][] x;
    private readonly ErrorCovariance covariance;
    private readonly Matrix<double> q;
    private readonly Matrix<double> spread;
    private readonly int shared;

    private LinearSolution(double[][] x, double[] y, ErrorCovariance covariance, QR<double> qr)
    {
        this.x = x;
        this.covariance = covariance;
        q = qr.Q;
        shared = covariance.Shared.Length;
        int count = qr.R.ColumnCount - shared;
        Matrix<double> r = qr.R.SubMatrix(shared, count, shared, count);
        if (!LeastSquares.FullRank(r))
            throw new ArgumentException("The coefficients cannot all be told from these observations.", nameof(x));
        Matrix<double> inverse = r.Inverse();
        spread = inverse * inverse.Transpose();
        Estimator = [.. Enumerable.Range(0, count).Select(j => EstimatorOf(inverse, j))];
        Coefficients = new double[count];
        Residuals = y;
        // Twice: the second round takes off what rounding left in the first.
        for (int round = 0; round < 2; round++)
        {
            Coefficients = [.. Coefficients.Select((b, j) => b + Products.Dot(Estimator[j], Residuals))];
            Residuals = [.. y.Select((v, i) => v - Products.Dot(x[i], Coefficients))];
        }
        ChiSquare = WeightedSquares(Residuals);
    }

    internal double[] Coefficients { get; }

    internal double[] Residuals { get; }

    /// <summary>Sum of squared residuals, weighted by V^-1.</summary>
    internal double ChiSquare { get; }

    /// <summary>For each coefficient what it takes of each observation.</summary>
    internal double[][] Estimator { get; }

    /// <exception cref="ArgumentException">The coefficients cannot all be told from the observations.</exception>
    internal static LinearSolution Of(
        double[][] x,
        double[] y,
        ErrorCovariance covariance,
        CancellationToken cancellation = default
    )
    {
        int n = y.Length,
            shared = covariance.Shared.Length,
            count = x.Length > 0 ? x[0].Length : 0;
        Matrix<double> design = Matrix<double>.Build.Dense(n + shared, shared + count);
        for (int g = 0; g < shared; g++)
        {
            design[n + g, g] = 1;
            for (int i = 0; i < n; i++)
                design[i, g] = covariance.Shared[g][i];
        }
        for (int j = 0; j < count; j++)
        {
            double[] column = [.. x.Select(row => row[j])];
            covariance.Whiten(column);
            for (int i = 0; i < n; i++)
                design[i, shared + j] = column[i];
        }
        cancellation.ThrowIfCancellationRequested();
        return new LinearSolution(x, y, covariance, design.QR(QRMethod.Thin));
    }

    internal double Covariance(int i, int j) => spread[i, j];

    /// <summary>V^-1 times a vector over the observations.</summary>
    internal double[] Weighted(double[] vector)
    {
        double[] z = (double[])vector.Clone();
        covariance.Whiten(z);
        double[] along = Along(z);
        for (int g = 0; g < shared; g++)
        for (int i = 0; i < z.Length; i++)
            z[i] -= q[i, g] * along[g];
        covariance.WhitenTransposed(z);
        return z;
    }

    /// <summary>
    /// An observation's place on the diagonal of V^-1, and on that of V^-1 - V^-1 X (X' V^-1 X)^-1 X' V^-1.
    /// </summary>
    internal (double Whole, double Left) Diagonals(int row)
    {
        (int[] rows, double[] unit) = covariance.Unit(row);
        double whole = Products.Dot(unit, unit),
            left = whole;
        for (int k = 0; k < q.ColumnCount; k++)
        {
            double sum = 0;
            for (int i = 0; i < rows.Length; i++)
                sum += q[rows[i], k] * unit[i];
            left -= sum * sum;
            if (k < shared)
                whole -= sum * sum;
        }
        return (whole, left);
    }

    /// <summary>The variance of an observation's residual: V - X (X' V^-1 X)^-1 X'.</summary>
    internal double ResidualVariance(int row)
    {
        double sum = covariance.Variance(row);
        for (int i = 0; i < x[row].Length; i++)
        for (int j = 0; j < x[row].Length; j++)
            sum -= x[row][i] * spread[i, j] * x[row][j];
        return sum;
    }

    private double[] EstimatorOf(Matrix<double> inverse, int coefficient)
    {
        double[] e = new double[x.Length];
        for (int k = 0; k < inverse.ColumnCount; k++)
        for (int i = 0; i < e.Length; i++)
            e[i] += inverse[coefficient, k] * q[i, shared + k];
        covariance.WhitenTransposed(e);
        return e;
    }

    private double WeightedSquares(double[] vector)
    {
        double[] z = (double[])vector.Clone();
        covariance.Whiten(z);
        double[] along = Along(z);
        double sum = 0;
        for (int i = 0; i < q.RowCount; i++)
        {
            double left = i < z.Length ? z[i] : 0;
            for (int g = 0; g < shared; g++)
                left -= q[i, g] * along[g];
            sum += left * left;
        }
        return sum;
    }

    /// <summary>Qg' z.</summary>
    private double[] Along(double[] z)
    {
        double[] along = new double[shared];
        for (int g = 0; g < shared; g++)
        for (int i = 0; i < z.Length; i++)
            along[g] += q[i, g] * z[i];
        return along;
    }
}
