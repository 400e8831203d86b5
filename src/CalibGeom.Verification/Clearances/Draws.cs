using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// Equally likely errors of all independent sources and with them true values of several quantities, weighted by what
/// was felt. With the first-order route every source is Gaussian, with Monte Carlo it has its own distribution; a
/// component that is known with few degrees of freedom gets one chi-squared factor a draw, which makes it a Student t.
/// </summary>
internal sealed class Draws
{
    private readonly IReadOnlyList<LinearEstimate> quantities;
    private readonly DrawnErrors errors;
    private readonly double[][] values;
    private readonly double[][] shifts;
    private readonly double[] weights;

    private Draws(
        IReadOnlyList<LinearEstimate> quantities,
        int joints,
        PredictionOptions options,
        CancellationToken cancellation
    )
    {
        this.quantities = quantities;
        weights = new double[options.Draws];
        Array.Fill(weights, 1.0 / weights.Length);
        shifts = Enumerable.Range(0, joints).Select(_ => new double[options.Draws]).ToArray();
        values = quantities.Select(_ => new double[options.Draws]).ToArray();
        errors = new DrawnErrors(quantities, joints, options);
        (int Source, double Factor)[][] factors = quantities.Select(errors.FactorsOf).ToArray();
        errors.Each(
            (n, drawn, shift) =>
            {
                for (int q = 0; q < values.Length; q++)
                {
                    double value = quantities[q].Value;
                    foreach ((int k, double factor) in factors[q])
                        value -= factor * drawn[k];
                    values[q][n] = value;
                }
                for (int j = 0; j < shifts.Length; j++)
                    shifts[j][n] = shift[j];
            },
            cancellation
        );
    }

    /// <summary>How many unweighted draws would say as much (Kish, 1965).</summary>
    internal double EffectiveCount => 1 / weights.Sum(w => w * w);

    internal static Draws Of(
        IReadOnlyList<LinearEstimate> quantities,
        int joints,
        PredictionOptions options,
        CancellationToken cancellation
    ) => new(quantities, joints, options, cancellation);

    internal double[] Values(int quantity) => values[quantity];

    internal double[] Shifts(int joint) => shifts[joint];

    /// <summary>
    /// Multiplies the weights by a likelihood and returns its mean before that: how probable the observation was.
    /// </summary>
    internal double Update(Func<int, double> likelihood)
    {
        double sum = 0;
        for (int n = 0; n < weights.Length; n++)
        {
            weights[n] *= likelihood(n);
            sum += weights[n];
        }
        if (sum > 0)
            for (int n = 0; n < weights.Length; n++)
                weights[n] /= sum;
        else
            Array.Fill(weights, 1.0 / weights.Length);
        return sum;
    }

    internal double Mean(Func<int, double> f)
    {
        double sum = 0;
        for (int n = 0; n < weights.Length; n++)
            sum += weights[n] * f(n);
        return sum;
    }

    internal double Covariance(int a, int b) => Covariance(values[a], values[b]);

    /// <summary>Mean, standard deviation and the probabilistically symmetric interval.</summary>
    internal Estimate Summary(int quantity, double degreesOfFreedom)
    {
        double[] sorted = (double[])values[quantity].Clone(),
            w = (double[])weights.Clone();
        Array.Sort(sorted, w);
        double tail = (1 - Coverage.Level) / 2;
        var interval = new Interval(Quantile(sorted, w, tail), Quantile(sorted, w, 1 - tail));
        return new Estimate(
            Mean(n => values[quantity][n]),
            Math.Sqrt(Covariance(quantity, quantity)),
            degreesOfFreedom,
            interval
        );
    }

    /// <summary>
    /// What the uncertainty is made of after all that is known: each component's share is the covariance of its part of
    /// the error with the whole error, so that shares add up to one. What was felt can make one negative.
    /// </summary>
    internal UncertaintyBudget Budget(int quantity, double degreesOfFreedom, CancellationToken cancellation)
    {
        double variance = Covariance(quantity, quantity),
            mean = Mean(n => values[quantity][n]);
        (int Source, double Factor)[] factors = errors.FactorsOf(quantities[quantity]);
        ErrorSource[] components =
        [
            .. factors.Select(f => errors.Sources[f.Source]).DistinctBy(s => s.Component, StringComparer.Ordinal),
        ];
        var number = components
            .Select((s, i) => (s.Component, i))
            .ToDictionary(p => p.Component, p => p.i, StringComparer.Ordinal);
        int[] componentOf = [.. factors.Select(f => number[errors.Sources[f.Source].Component])];
        double[] part = new double[components.Length],
            sums = new double[components.Length],
            squares = new double[components.Length],
            products = new double[components.Length];
        errors.Each(
            (n, drawn, _) =>
            {
                Array.Clear(part);
                for (int i = 0; i < factors.Length; i++)
                    part[componentOf[i]] -= factors[i].Factor * drawn[factors[i].Source];
                for (int c = 0; c < part.Length; c++)
                {
                    double weighted = weights[n] * part[c];
                    sums[c] += weighted;
                    squares[c] += weighted * part[c];
                    products[c] += weighted * (values[quantity][n] - mean);
                }
            },
            cancellation
        );
        BudgetComponent[] budget =
        [
            .. components.Select(
                (first, c) =>
                    ComponentOf(
                        first,
                        Math.Sqrt(Math.Max(0, squares[c] - sums[c] * sums[c])),
                        variance > 0 ? products[c] / variance : 0
                    )
            ),
        ];
        return new UncertaintyBudget(mean, Math.Sqrt(variance), degreesOfFreedom, budget);
    }

    private static BudgetComponent ComponentOf(ErrorSource first, double own, double share) =>
        new()
        {
            Name = first.Component,
            Value = 0,
            StandardUncertainty = first.U,
            Evaluation = first.Evaluation,
            Shape = first.Shape,
            DegreesOfFreedom = first.DegreesOfFreedom,
            Sensitivity = first.U > 0 ? own / first.U : 0,
            Share = share,
        };

    private double Covariance(double[] a, double[] b)
    {
        double meanA = Mean(n => a[n]),
            meanB = Mean(n => b[n]);
        return Mean(n => (a[n] - meanA) * (b[n] - meanB));
    }

    private static double Quantile(double[] sorted, double[] w, double probability)
    {
        double sum = 0;
        for (int n = 0; n < sorted.Length; n++)
        {
            sum += w[n];
            if (sum >= probability)
                return sorted[n];
        }
        return sorted[^1];
    }
}
