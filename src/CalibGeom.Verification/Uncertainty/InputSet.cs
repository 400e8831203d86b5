using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Uncertainty;

/// <summary>
/// The input quantities of a measurement with their correlations, through which models are propagated: by the law of
/// propagation of uncertainty (JCGM 100, 5.1.2 and 5.2.2) or by Monte Carlo (JCGM 101). Immutable and safe to share
/// between threads.
/// </summary>
public sealed class InputSet
{
    private readonly InputQuantity[] inputs;
    private readonly Matrix<double>? correlation;

    /// <summary>Input quantities.</summary>
    /// <param name="inputs">At least one.</param>
    /// <param name="correlation">Correlation coefficients, symmetric with ones on the diagonal; null for independent
    /// inputs.</param>
    /// <exception cref="ArgumentException">There is no input, or the matrix does not fit, is not symmetric or not
    /// positive definite.</exception>
    public InputSet(IEnumerable<InputQuantity> inputs, double[,]? correlation = null)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        this.inputs = inputs.ToArray();
        if (this.inputs.Length == 0)
            throw new ArgumentException("inputs is empty.", nameof(inputs));
        if (correlation is not null)
            this.correlation = CorrelationCheck.Matrix(correlation, this.inputs.Length);
    }

    /// <summary>The inputs.</summary>
    public IReadOnlyList<InputQuantity> Inputs => inputs;

    /// <summary>
    /// Means of quantities that were observed together, with the correlations of the observations (JCGM 100, 5.2.3).
    /// </summary>
    /// <param name="names">A name for each quantity.</param>
    /// <param name="observations">For each quantity its observations, equally many, in the same order; at least
    /// two.</param>
    /// <exception cref="ArgumentException">The counts do not fit.</exception>
    public static InputSet Of(IReadOnlyList<string> names, IReadOnlyList<IReadOnlyList<double>> observations)
    {
        ArgumentNullException.ThrowIfNull(names);
        ArgumentNullException.ThrowIfNull(observations);
        if (names.Count != observations.Count || observations.Any(o => o.Count != observations[0].Count))
            throw new ArgumentException(
                "observations needs one list of equal length for each name.",
                nameof(observations)
            );
        InputQuantity[] inputs = names.Select((n, i) => InputQuantity.Of(n, observations[i])).ToArray();
        double[,] r = new double[names.Count, names.Count];
        for (int i = 0; i < names.Count; i++)
        for (int j = 0; j < names.Count; j++)
            r[i, j] = i == j ? 1 : CorrelationCheck.Coefficient(observations[i], observations[j]);
        return new InputSet(inputs, r);
    }

    /// <summary>Propagates a model by first-order law of propagation.</summary>
    /// <param name="model">The model; it gets the values of the inputs in their order.</param>
    /// <exception cref="ArithmeticException">The model gave a value that is not finite.</exception>
    public UncertaintyBudget Propagate(Func<double[], double> model)
    {
        ArgumentNullException.ThrowIfNull(model);
        double[] c = Differences.Gradient(model, inputs);
        double variance = Covariance(c, c);
        var components = new BudgetComponent[inputs.Length];
        for (int i = 0; i < inputs.Length; i++)
        {
            double[] alone = new double[inputs.Length];
            alone[i] = c[i];
            double share = variance > 0 ? Covariance(alone, c) / variance : 0;
            InputQuantity q = inputs[i];
            components[i] = new BudgetComponent
            {
                Name = q.Name,
                Value = q.Value,
                StandardUncertainty = q.StandardUncertainty,
                Evaluation = q.Evaluation,
                Shape = q.Shape,
                DegreesOfFreedom = q.DegreesOfFreedom,
                Sensitivity = c[i],
                Share = share,
            };
        }
        return new UncertaintyBudget(
            Differences.At(model, inputs),
            Math.Sqrt(variance),
            EffectiveDegrees(components),
            components
        );
    }

    /// <summary>The covariance of two results of the same inputs, by first-order propagation.</summary>
    /// <param name="first">One model.</param>
    /// <param name="second">Another.</param>
    public double Covariance(Func<double[], double> first, Func<double[], double> second) =>
        Covariance(Differences.Gradient(first, inputs), Differences.Gradient(second, inputs));

    /// <summary>
    /// The standard uncertainty with second-order terms (JCGM 100, 5.1.2 note) of a model with independent symmetric
    /// inputs.
    /// </summary>
    /// <param name="model">The model.</param>
    /// <exception cref="InvalidOperationException">The inputs are correlated.</exception>
    public double SecondOrderUncertainty(Func<double[], double> model)
    {
        if (correlation is not null)
            throw new InvalidOperationException("Second-order terms are defined for independent inputs only.");
        double first = Propagate(model).StandardUncertainty;
        return Math.Sqrt(Math.Max(0, first * first + Differences.SecondOrderVariance(model, inputs)));
    }

    /// <summary>Propagates a model by Monte Carlo. Correlated inputs must be Gaussian (JCGM 101, 6.4.8).</summary>
    /// <param name="model">The model.</param>
    /// <param name="options">How; null for the defaults.</param>
    /// <param name="progress">Told the share of the trials, or of the most there may be, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="InvalidOperationException">A correlated input is not Gaussian.</exception>
    /// <exception cref="ArithmeticException">The model gave a value that is not finite.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public MonteCarloResult MonteCarlo(
        Func<double[], double> model,
        MonteCarloOptions? options = null,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(model);
        options ??= MonteCarloOptions.Default;
        double[] x = new double[inputs.Length];
        double total = options.Trials ?? options.Limit;
        int done = 0;
        Action<SeededRandom, double[]> draw = correlation is null ? DrawIndependent : CorrelatedDraw();
        return Uncertainty.MonteCarlo.Run(
            random =>
            {
                cancellation.ThrowIfCancellationRequested();
                if (++done % 1000 == 0)
                    progress?.Report(done / total);
                draw(random, x);
                return model(x);
            },
            options
        );
    }

    private void DrawIndependent(SeededRandom random, double[] x)
    {
        for (int i = 0; i < x.Length; i++)
            x[i] = inputs[i].Draw(random);
    }

    private Action<SeededRandom, double[]> CorrelatedDraw()
    {
        if (Array.Find(inputs, q => q.Shape != InputShape.Normal) is { } other)
            throw new InvalidOperationException(
                $"{other.Name} is correlated but not Gaussian; Monte Carlo draws correlated inputs from a joint "
                    + $"Gaussian only."
            );
        Matrix<double> factor = CorrelationCheck.Factor(correlation!);
        double[] z = new double[inputs.Length];
        return (random, x) =>
        {
            for (int i = 0; i < z.Length; i++)
            {
                z[i] = random.Normal();
                double sum = 0;
                for (int j = 0; j <= i; j++)
                    sum += factor[i, j] * z[j];
                x[i] = inputs[i].Value + inputs[i].StandardUncertainty * sum;
            }
        };
    }

    private double Covariance(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < inputs.Length; i++)
        for (int j = 0; j < inputs.Length; j++)
            if (i == j || correlation is not null)
                sum +=
                    a[i]
                    * b[j]
                    * inputs[i].StandardUncertainty
                    * inputs[j].StandardUncertainty
                    * (i == j ? 1 : correlation![i, j]);
        return sum;
    }

    /// <summary>
    /// Welch-Satterthwaite holds for independent inputs; for correlated ones the least degrees of freedom are the
    /// cautious answer.
    /// </summary>
    private double EffectiveDegrees(BudgetComponent[] components) =>
        correlation is null
            ? Coverage.EffectiveDegreesOfFreedom(components.Select(c => (c.Contribution, c.DegreesOfFreedom)))
            : components.Min(c => c.DegreesOfFreedom);
}
