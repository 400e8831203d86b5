using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tuning.Sampling;

/// <summary>Means, spreads and quantiles of values with weights that add up to one.</summary>
internal static class Weighted
{
    internal static double Mean(double[] values, double[] weights) => Products.Dot(weights, values);

    internal static (double Mean, double Deviation) Moments(double[] values, double[] weights)
    {
        double mean = Mean(values, weights),
            square = 0;
        for (int i = 0; i < values.Length; i++)
            square += weights[i] * (values[i] - mean) * (values[i] - mean);
        return (mean, Math.Sqrt(square));
    }

    internal static double Share(double[] values, double[] weights, Func<double, bool> of)
    {
        double sum = 0;
        for (int i = 0; i < values.Length; i++)
            if (of(values[i]))
                sum += weights[i];
        return sum;
    }

    /// <summary>The values below which some shares of the weight lie, shares rising.</summary>
    internal static double[] Quantiles(double[] values, double[] weights, params double[] shares)
    {
        int[] order = [.. Enumerable.Range(0, values.Length)];
        double[] keys = [.. values];
        Array.Sort(keys, order);
        var found = new double[shares.Length];
        double sum = 0;
        int next = 0;
        for (int i = 0; i < order.Length && next < shares.Length; i++)
        {
            sum += weights[order[i]];
            while (next < shares.Length && sum >= shares[next])
                found[next++] = keys[i];
        }
        while (next < shares.Length)
            found[next++] = keys[^1];
        return found;
    }

    /// <summary>Weights from logarithms, which may lie far apart; all alike when every one is impossible.</summary>
    internal static double[] FromLogarithms(double[] logarithms, double power = 1)
    {
        double most = logarithms.Max();
        if (!double.IsFinite(most))
            return [.. Enumerable.Repeat(1.0 / logarithms.Length, logarithms.Length)];
        double[] weights = [.. logarithms.Select(l => Math.Exp(power * (l - most)))];
        double sum = weights.Sum();
        for (int i = 0; i < weights.Length; i++)
            weights[i] /= sum;
        return weights;
    }

    /// <summary>How many equally weighted draws say as much: 1 / sum of squared weights (Kish).</summary>
    internal static double EffectiveCount(double[] weights) => 1 / weights.Sum(w => w * w);
}
