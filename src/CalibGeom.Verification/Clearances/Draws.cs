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
    private readonly ErrorSource[] sources;
    private readonly int[] active;
    private readonly double[][] errors;
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
        ErrorSource[] all = [.. quantities.MaxBy(e => e.Factors.Length)!.Sources];
        active = Enumerable
            .Range(0, all.Length)
            .Where(k => quantities.Any(e => k < e.Factors.Length && e.Factors[k] != 0))
            .ToArray();
        sources = active.Select(k => all[k]).ToArray();
        errors = sources.Select(_ => new double[options.Draws]).ToArray();
        shifts = Enumerable.Range(0, joints).Select(_ => new double[options.Draws]).ToArray();
        weights = new double[options.Draws];
        Array.Fill(weights, 1.0 / weights.Length);
        Fill(options, cancellation);
        values = new double[quantities.Count][];
        for (int q = 0; q < values.Length; q++)
        {
            cancellation.ThrowIfCancellationRequested();
            values[q] = ValuesOf(quantities[q]);
        }
    }

    internal int Count => weights.Length;

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
    internal UncertaintyBudget Budget(int quantity, double degreesOfFreedom)
    {
        LinearEstimate e = quantities[quantity];
        double variance = Covariance(quantity, quantity);
        BudgetComponent[] components = Enumerable
            .Range(0, sources.Length)
            .Where(k => active[k] < e.Factors.Length && e.Factors[active[k]] != 0)
            .GroupBy(k => sources[k].Component)
            .Select(g =>
            {
                double[] part = new double[Count];
                foreach (int k in g)
                    for (int n = 0; n < part.Length; n++)
                        part[n] -= e.Factors[active[k]] * errors[k][n];
                ErrorSource first = sources[g.First()];
                double own = Math.Sqrt(Covariance(part, part));
                return new BudgetComponent(
                    first.Component,
                    0,
                    first.U,
                    first.Evaluation,
                    first.Shape,
                    first.DegreesOfFreedom,
                    first.U > 0 ? own / first.U : 0,
                    variance > 0 ? Covariance(part, values[quantity]) / variance : 0
                );
            })
            .ToArray();
        return new UncertaintyBudget(Mean(n => values[quantity][n]), Math.Sqrt(variance), degreesOfFreedom, components);
    }

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

    private void Fill(PredictionOptions options, CancellationToken cancellation)
    {
        var random = new SeededRandom(options.Seed);
        var person = new FeltPerson(options.Thresholds);
        bool shaped = options.Route == Route.MonteCarlo;
        string[] components = sources
            .Where(s => double.IsFinite(s.DegreesOfFreedom))
            .Select(s => s.Component)
            .Distinct()
            .ToArray();
        double[] freedom = components.Select(c => sources.First(s => s.Component == c).DegreesOfFreedom).ToArray();
        int[] componentOf = sources.Select(s => Array.IndexOf(components, s.Component)).ToArray();
        double[] inflation = new double[components.Length],
            one = new double[shifts.Length];
        for (int n = 0; n < weights.Length; n++)
        {
            cancellation.ThrowIfCancellationRequested();
            for (int c = 0; c < inflation.Length; c++)
                inflation[c] = Math.Sqrt(freedom[c] / random.ChiSquared(freedom[c]));
            for (int k = 0; k < sources.Length; k++)
            {
                double factor = componentOf[k] < 0 ? 1 : inflation[componentOf[k]];
                errors[k][n] = shaped ? sources[k].Draw(random, factor) : sources[k].U * factor * random.Normal();
            }
            person.Draw(random, one);
            for (int j = 0; j < one.Length; j++)
                shifts[j][n] = one[j];
        }
    }

    private double[] ValuesOf(LinearEstimate e)
    {
        double[] all = new double[weights.Length];
        Array.Fill(all, e.Value);
        for (int k = 0; k < sources.Length; k++)
        {
            double factor = active[k] < e.Factors.Length ? e.Factors[active[k]] : 0;
            if (factor == 0)
                continue;
            double[] error = errors[k];
            for (int n = 0; n < all.Length; n++)
                all[n] -= factor * error[n];
        }
        return all;
    }
}
