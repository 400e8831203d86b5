namespace CalibGeom.Verification.Uncertainty;

/// <summary>
/// The lower Cholesky root L of a small covariance C = L L'. Own code beside MathNet because it runs some thousand
/// times an answer on matrices of a few rows, without an allocation a call to wrap each.
/// </summary>
internal sealed class LowerRoot
{
    private readonly double[][] rows;

    /// <param name="covariance">Symmetric and positive definite; only its lower half is read.</param>
    internal LowerRoot(double[,] covariance)
    {
        int n = covariance.GetLength(0);
        rows = new double[n][];
        for (int i = 0; i < n; i++)
        {
            rows[i] = new double[i + 1];
            for (int j = 0; j <= i; j++)
            {
                double sum = covariance[i, j];
                for (int k = 0; k < j; k++)
                    sum -= rows[i][k] * rows[j][k];
                IsProper &= i != j || sum > 0;
                rows[i][j] = i == j ? Math.Sqrt(Math.Max(sum, 1e-18)) : sum / rows[j][j];
            }
            LogDiagonal += Math.Log(rows[i][i]);
        }
    }

    /// <summary>Whether the covariance was positive definite.</summary>
    internal bool IsProper { get; } = true;

    /// <summary>Half the logarithm of the determinant.</summary>
    internal double LogDiagonal { get; }

    internal double[] Times(double[] x)
    {
        var y = new double[rows.Length];
        for (int i = 0; i < y.Length; i++)
        for (int k = 0; k <= i; k++)
            y[i] += rows[i][k] * x[k];
        return y;
    }

    /// <summary>x' C^-1 x.</summary>
    internal double SquaredLength(double[] x)
    {
        double sum = 0;
        foreach (double u in Forward(x))
            sum += u * u;
        return sum;
    }

    /// <summary>C^-1 x.</summary>
    internal double[] Solve(double[] x) => Backward(Forward(x));

    /// <summary>L^-1 x.</summary>
    internal double[] Forward(double[] x)
    {
        var u = new double[x.Length];
        for (int i = 0; i < u.Length; i++)
        {
            double sum = x[i];
            for (int k = 0; k < i; k++)
                sum -= rows[i][k] * u[k];
            u[i] = sum / rows[i][i];
        }
        return u;
    }

    /// <summary>L'^-1 u.</summary>
    internal double[] Backward(double[] u)
    {
        double[] x = (double[])u.Clone();
        for (int i = x.Length - 1; i >= 0; i--)
        {
            x[i] /= rows[i][i];
            for (int k = 0; k < i; k++)
                x[k] -= rows[i][k] * x[i];
        }
        return x;
    }
}
