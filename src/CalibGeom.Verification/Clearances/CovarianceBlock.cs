using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>The covariance of a few rows among many, by its root.</summary>
internal sealed class CovarianceBlock
{
    private readonly LowerRoot root;

    private CovarianceBlock(int[] rows, LowerRoot root) => (Rows, this.root) = (rows, root);

    /// <summary>The rows, ascending.</summary>
    internal int[] Rows { get; }

    internal static CovarianceBlock Of(
        int[] rows,
        IReadOnlyList<(int Source, double Factor)[]> errors,
        Func<int, double> u,
        double floor
    )
    {
        var v = new double[rows.Length, rows.Length];
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
                v[i, j] = sum;
            }
        }
        var root = new LowerRoot(v);
        return root.IsProper
            ? new CovarianceBlock(rows, root)
            : throw new ArgumentException("covariance is not positive definite.");
    }

    /// <summary>L^-1 of what a vector holds in these rows, in place.</summary>
    internal void Whiten(double[] vector) => Change(vector, root.Forward);

    /// <summary>L'^-1 of what a vector holds in these rows, in place.</summary>
    internal void WhitenTransposed(double[] vector) => Change(vector, root.Backward);

    /// <summary>L^-1 of the unit vector of one of these rows.</summary>
    internal double[] Unit(int row)
    {
        double[] unit = new double[Rows.Length];
        unit[Array.BinarySearch(Rows, row)] = 1;
        return root.Forward(unit);
    }

    private void Change(double[] vector, Func<double[], double[]> into)
    {
        double[] changed = into([.. Rows.Select(r => vector[r])]);
        for (int i = 0; i < changed.Length; i++)
            vector[Rows[i]] = changed[i];
    }
}
