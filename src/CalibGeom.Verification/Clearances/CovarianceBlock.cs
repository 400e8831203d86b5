namespace CalibGeom.Verification.Clearances;

/// <summary>The covariance of a few rows by its Cholesky factor.</summary>
internal sealed class CovarianceBlock
{
    private readonly double[][] factor;

    private CovarianceBlock(int[] rows, double[][] factor)
    {
        Rows = rows;
        this.factor = factor;
    }

    /// <summary>The rows, ascending.</summary>
    internal int[] Rows { get; }

    internal static CovarianceBlock Of(
        int[] rows,
        IReadOnlyList<(int Source, double Factor)[]> errors,
        Func<int, double> u,
        double floor
    )
    {
        double[][] v = [.. rows.Select((_, i) => new double[i + 1])];
        var dense = new Dictionary<int, double>();
        for (int i = 0; i < rows.Length; i++)
        {
            dense.Clear();
            foreach ((int k, double a) in errors[rows[i]])
                dense[k] = dense.GetValueOrDefault(k) + a * u(k) * u(k);
            for (int j = 0; j <= i; j++)
            {
                double sum = i == j ? floor * floor : 0;
                foreach ((int k, double a) in errors[rows[j]])
                    sum += a * dense.GetValueOrDefault(k);
                v[i][j] = sum;
            }
        }
        Factorise(v);
        return new CovarianceBlock(rows, v);
    }

    internal void Whiten(double[] vector)
    {
        for (int i = 0; i < Rows.Length; i++)
        {
            double sum = vector[Rows[i]];
            for (int j = 0; j < i; j++)
                sum -= factor[i][j] * vector[Rows[j]];
            vector[Rows[i]] = sum / factor[i][i];
        }
    }

    internal void WhitenTransposed(double[] vector)
    {
        for (int i = Rows.Length - 1; i >= 0; i--)
        {
            double value = vector[Rows[i]] / factor[i][i];
            vector[Rows[i]] = value;
            for (int j = 0; j < i; j++)
                vector[Rows[j]] -= factor[i][j] * value;
        }
    }

    internal double[] Unit(int row)
    {
        double[] z = new double[Rows.Length];
        int first = Array.BinarySearch(Rows, row);
        z[first] = 1 / factor[first][first];
        for (int i = first + 1; i < z.Length; i++)
        {
            double sum = 0;
            for (int j = first; j < i; j++)
                sum -= factor[i][j] * z[j];
            z[i] = sum / factor[i][i];
        }
        return z;
    }

    private static void Factorise(double[][] v)
    {
        for (int i = 0; i < v.Length; i++)
        for (int j = 0; j <= i; j++)
        {
            double sum = v[i][j];
            for (int k = 0; k < j; k++)
                sum -= v[i][k] * v[j][k];
            if (i > j)
                v[i][j] = sum / v[j][j];
            else
                v[i][i] =
                    sum > 0 ? Math.Sqrt(sum) : throw new ArgumentException("covariance is not positive definite.");
        }
    }
}
