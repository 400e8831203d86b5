namespace CalibGeom.Verification.Clearances;

/// <summary>
/// The covariance of rows whose errors are combinations of independent sources, V = B + G G': B has a block for rows
/// that share sources among each other, G a column for each source that holds many rows together. Which sources those
/// are is chosen so that solving costs least, so that it grows with the number of rows and not with its cube.
/// </summary>
internal sealed class ErrorCovariance
{
    private readonly CovarianceBlock[] blocks;
    private readonly CovarianceBlock[] blockOf;
    private readonly double[] variances;

    private ErrorCovariance(CovarianceBlock[] blocks, double[] variances, double[][] shared)
    {
        this.blocks = blocks;
        this.variances = variances;
        blockOf = new CovarianceBlock[variances.Length];
        foreach (CovarianceBlock b in blocks)
        foreach (int row in b.Rows)
            blockOf[row] = b;
        foreach (double[] column in shared)
            Whiten(column);
        Shared = shared;
    }

    /// <summary>The columns of G after <see cref="Whiten"/>.</summary>
    internal double[][] Shared { get; }

    /// <summary>Of errors of the rows, none of which may name a source twice.</summary>
    /// <param name="errors">Sources and factors of each row.</param>
    /// <param name="u">Standard uncertainty of each source.</param>
    /// <param name="floor">What each row has beside its sources; over 0.</param>
    /// <param name="coefficients">How many coefficients there are beside the sources.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal static ErrorCovariance Of(
        IReadOnlyList<(int Source, double Factor)[]> errors,
        IReadOnlyList<double> u,
        double floor,
        int coefficients,
        CancellationToken cancellation = default
    )
    {
        SharedSources parts = SharedSources.Of(errors, u, coefficients);
        double[] variances = new double[errors.Count];
        double[][] shared = [.. parts.Sources.Select(_ => new double[errors.Count])];
        for (int row = 0; row < errors.Count; row++)
        {
            variances[row] = floor * floor;
            foreach ((int k, double a) in errors[row])
            {
                variances[row] += a * a * u[k] * u[k];
                if (parts.ColumnOf(k) is { } column)
                    shared[column][row] += a * u[k];
            }
        }
        CovarianceBlock[] blocks =
        [
            .. parts.Blocks.Select(rows =>
            {
                cancellation.ThrowIfCancellationRequested();
                return CovarianceBlock.Of(rows, errors, k => parts.ColumnOf(k) is null ? u[k] : 0, floor);
            }),
        ];
        return new ErrorCovariance(blocks, variances, shared);
    }

    /// <summary>The variance of a row, all its sources together.</summary>
    internal double Variance(int row) => variances[row];

    /// <summary>Turns a vector over the rows into L^-1 of it in place, where B = L L'.</summary>
    internal void Whiten(double[] vector)
    {
        foreach (CovarianceBlock b in blocks)
            b.Whiten(vector);
    }

    /// <summary>Turns a vector over the rows into L'^-1 of it in place.</summary>
    internal void WhitenTransposed(double[] vector)
    {
        foreach (CovarianceBlock b in blocks)
            b.WhitenTransposed(vector);
    }

    /// <summary>L^-1 of the unit vector of a row: only rows of its block have a part in it.</summary>
    internal (int[] Rows, double[] Values) Unit(int row) => (blockOf[row].Rows, blockOf[row].Unit(row));
}
