using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// Observations that are linear in coefficients and in independent errors: y = X b + A e. Solved by generalised least
/// squares; predictions of quantities that contain realised errors are best linear unbiased ones (Henderson, 1975): P b
/// + K (y - X b), K = B D A' V^-1.
/// </summary>
internal sealed class LinearSystem
{
    /// <summary>
    /// Keeps the covariance positive definite when every error was set to zero; a millionth of a millimetre.
    /// </summary>
    private const double Floor = 1e-6;

    private readonly List<ErrorSource> sources = [];
    private readonly Dictionary<string, int> index = new(StringComparer.Ordinal);
    private readonly List<(double Value, double[] Coefficients, (int Source, double Factor)[] Errors)> rows = [];
    private readonly int coefficientCount;
    private LinearSolution fit = null!;

    internal LinearSystem(int coefficientCount) => this.coefficientCount = coefficientCount;

    internal IReadOnlyList<ErrorSource> Sources => sources;

    internal int RowCount => rows.Count;

    /// <summary>The number of a source, which is made when it is new.</summary>
    internal int Source(
        string name,
        string component,
        double u,
        InputShape shape,
        double degreesOfFreedom = double.PositiveInfinity,
        Evaluation evaluation = Evaluation.B
    )
    {
        if (index.TryGetValue(name, out int known))
            return known;
        index[name] = sources.Count;
        sources.Add(new ErrorSource(name, component, u, shape, degreesOfFreedom, evaluation));
        return sources.Count - 1;
    }

    internal void Add(double value, double[] coefficients, params (int Source, double Factor)[] errors) =>
        rows.Add((value, coefficients, errors));

    /// <summary>Solves for the coefficients; after this no row may be added.</summary>
    internal void Solve(CancellationToken cancellation = default) =>
        fit = LinearSolution.Of(
            [.. rows.Select(r => r.Coefficients)],
            [.. rows.Select(r => r.Value)],
            ErrorCovariance.Of(
                [.. rows.Select(r => r.Errors)],
                [.. sources.Select(s => s.U)],
                Floor,
                coefficientCount,
                cancellation
            ),
            cancellation
        );

    internal double Coefficient(int i) => fit.Coefficients[i];

    internal double CoefficientUncertainty(int i) => Math.Sqrt(fit.Covariance(i, i));

    /// <summary>Observations less coefficients.</summary>
    internal int DegreesOfFreedom => rows.Count - coefficientCount;

    /// <summary>Sum of squared residuals, weighted by the inverse covariance.</summary>
    internal double ChiSquare => fit.ChiSquare;

    /// <summary>
    /// How far each row lies from what all others predict of it, and the standard uncertainty of that: exact
    /// leave-one-out for correlated rows, by Q = V^-1 - V^-1 X (X' V^-1 X)^-1 X' V^-1; distance (Q y)_i / Q_ii,
    /// uncertainty Q_ii^-1/2. A row that the others say nothing of has an infinite uncertainty.
    /// </summary>
    internal (double Distance, double U)[] Deleted()
    {
        double[] weighted = fit.Weighted(fit.Residuals);
        return
        [
            .. Enumerable
                .Range(0, rows.Count)
                .Select(i =>
                {
                    (double whole, double left) = fit.Diagonals(i);
                    return left > 1e-9 * whole
                        ? (weighted[i] / left, 1 / Math.Sqrt(left))
                        : (0, double.PositiveInfinity);
                }),
        ];
    }

    /// <summary>Residuals with their own standard uncertainties: diagonal of V - X (X' V^-1 X)^-1 X'.</summary>
    internal IEnumerable<(double Residual, double U)> Residuals() =>
        fit.Residuals.Select((r, i) => (r, Math.Sqrt(Math.Max(0, fit.ResidualVariance(i)))));

    /// <summary>
    /// The best prediction of a quantity; from the coefficients alone when asked, leaving out what rows say of realised
    /// errors.
    /// </summary>
    internal LinearEstimate Predict(LinearTarget target, bool fromModelOnly = false)
    {
        double[] gain = fromModelOnly ? new double[rows.Count] : Gain(target.Realised);
        double[] weights = new double[rows.Count];
        double[] left = (double[])target.Coefficients.Clone();
        for (int i = 0; i < rows.Count; i++)
        for (int j = 0; j < coefficientCount; j++)
            left[j] -= gain[i] * rows[i].Coefficients[j];
        for (int i = 0; i < rows.Count; i++)
        {
            weights[i] = gain[i];
            for (int j = 0; j < coefficientCount; j++)
                weights[i] += left[j] * fit.Estimator[j][i];
        }
        double value = target.Constant;
        for (int j = 0; j < coefficientCount; j++)
            value += target.Coefficients[j] * fit.Coefficients[j];
        for (int i = 0; i < rows.Count; i++)
            value += gain[i] * fit.Residuals[i];
        return Estimate(value, weights, target.Realised);
    }

    /// <summary>
    /// A quantity as a fixed combination of rows, without the model; the combination must cancel what the coefficients
    /// do to the target.
    /// </summary>
    internal LinearEstimate Direct(
        double constant,
        IReadOnlyList<(int Row, double Factor)> combination,
        LinearTarget target
    )
    {
        double[] weights = new double[rows.Count];
        double value = constant;
        foreach ((int row, double factor) in combination)
        {
            weights[row] += factor;
            value += factor * rows[row].Value;
        }
        return Estimate(value, weights, target.Realised);
    }

    private LinearEstimate Estimate(double value, double[] weights, IReadOnlyList<(int Source, double Factor)> realised)
    {
        double[] factors = new double[sources.Count];
        for (int i = 0; i < rows.Count; i++)
            foreach ((int source, double factor) in rows[i].Errors)
                factors[source] += weights[i] * factor;
        foreach ((int source, double factor) in realised)
            factors[source] -= factor;
        return new LinearEstimate(value, factors, sources);
    }

    /// <summary>What each row says of realised errors: their covariance with the rows, times V^-1.</summary>
    private double[] Gain(IReadOnlyList<(int Source, double Factor)> realised)
    {
        double[] shared = new double[rows.Count];
        foreach ((int source, double factor) in realised)
            for (int i = 0; i < rows.Count; i++)
                foreach ((int k, double a) in rows[i].Errors)
                    if (k == source)
                        shared[i] += factor * a * sources[k].U * sources[k].U;
        return Array.TrueForAll(shared, s => s == 0) ? shared : fit.Weighted(shared);
    }
}
