using CalibGeom.Verification.Uncertainty;
using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// Equally likely true values of several quantities given their estimates, weighted by what else is known. They come
/// from the errors' own
/// distributions, or from a joint Gaussian.
/// </summary>
internal sealed class Draws
{
    private readonly double[][] values;
    private readonly double[] weights;

    private Draws(double[][] values)
    {
        this.values = values;
        weights = new double[values[0].Length];
        Array.Fill(weights, 1.0 / weights.Length);
    }

    internal int Count => weights.Length;

    /// <summary>How many unweighted draws would say as much (Kish, 1965).</summary>
    internal double EffectiveCount => 1 / weights.Sum(w => w * w);

    internal static Draws Of(IReadOnlyList<LinearEstimate> estimates, PredictionOptions options)
    {
        var random = new SeededRandom(options.Seed);
        double[][] values = estimates.Select(_ => new double[options.Draws]).ToArray();
        Action<SeededRandom, double[]> draw =
            options.Route == Route.MonteCarlo ? FromSources(estimates) : FromGaussian(estimates);
        double[] one = new double[estimates.Count];
        for (int n = 0; n < options.Draws; n++)
        {
            draw(random, one);
            for (int i = 0; i < one.Length; i++)
                values[i][n] = one[i];
        }
        return new Draws(values);
    }

    internal double[] Values(int quantity) => values[quantity];

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

    internal double Covariance(int a, int b)
    {
        double meanA = Mean(n => values[a][n]),
            meanB = Mean(n => values[b][n]);
        return Mean(n => (values[a][n] - meanA) * (values[b][n] - meanB));
    }

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

    private static Action<SeededRandom, double[]> FromSources(IReadOnlyList<LinearEstimate> estimates)
    {
        ErrorSource[] all = [.. estimates.MaxBy(e => e.Factors.Length)!.Sources];
        int[] active = Enumerable
            .Range(0, all.Length)
            .Where(k => estimates.Any(e => k < e.Factors.Length && e.Factors[k] != 0))
            .ToArray();
        ErrorSource[] sources = active.Select(k => all[k]).ToArray();
        double[][] factors = estimates
            .Select(e => active.Select(k => k < e.Factors.Length ? e.Factors[k] : 0).ToArray())
            .ToArray();
        string[] components = sources
            .Where(s => double.IsFinite(s.DegreesOfFreedom))
            .Select(s => s.Component)
            .Distinct()
            .ToArray();
        double[] freedom = components.Select(c => sources.First(s => s.Component == c).DegreesOfFreedom).ToArray();
        int[] componentOf = sources.Select(s => Array.IndexOf(components, s.Component)).ToArray();
        double[] inflation = new double[components.Length],
            errors = new double[sources.Length];
        return (random, one) =>
        {
            for (int c = 0; c < inflation.Length; c++)
                inflation[c] = Math.Sqrt(freedom[c] / random.ChiSquared(freedom[c]));
            for (int k = 0; k < errors.Length; k++)
                errors[k] = sources[k].Draw(random, componentOf[k] < 0 ? 1 : inflation[componentOf[k]]);
            for (int i = 0; i < one.Length; i++)
            {
                double sum = estimates[i].Value;
                double[] row = factors[i];
                for (int k = 0; k < errors.Length; k++)
                    sum -= row[k] * errors[k];
                one[i] = sum;
            }
        };
    }

    private static Action<SeededRandom, double[]> FromGaussian(IReadOnlyList<LinearEstimate> estimates)
    {
        int n = estimates.Count;
        double[] u = estimates.Select(e => Math.Max(e.StandardUncertainty, 1e-12)).ToArray();
        Matrix<double> correlation = Matrix<double>.Build.Dense(
            n,
            n,
            (i, j) => i == j ? 1 : estimates[i].Covariance(estimates[j]) / (u[i] * u[j])
        );
        Matrix<double> factor = (correlation + Matrix<double>.Build.DenseIdentity(n) * 1e-9).Cholesky().Factor;
        double[,] f = factor.ToArray();
        double[] z = new double[n];
        return (random, one) =>
        {
            for (int i = 0; i < n; i++)
            {
                z[i] = random.Normal();
                double sum = 0;
                for (int j = 0; j <= i; j++)
                    sum += f[i, j] * z[j];
                one[i] = estimates[i].Value + u[i] * sum;
            }
        };
    }
}
