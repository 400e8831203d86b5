using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Trends.Changes;

/// <summary>Quantiles of normal laws mixed by weight, and of weighted points.</summary>
internal static class Mixture
{
    internal static Amount Of(IReadOnlyList<(double Weight, double Mean, double Deviation)> parts) =>
        new(Quantile(parts, 0.5), Quantile(parts, 0.025), Quantile(parts, 0.975));

    internal static double Below(IReadOnlyList<(double Weight, double Mean, double Deviation)> parts, double value)
    {
        double below = 0,
            all = 0;
        foreach ((double weight, double mean, double deviation) in parts)
        {
            all += weight;
            below += weight * Normal.CDF(mean, Math.Max(deviation, 1e-12), value);
        }
        return below / all;
    }

    /// <summary>The point below which a share of the weight lies; infinity counts.</summary>
    internal static double Quantile(IEnumerable<(double Weight, double At)> points, double share)
    {
        (double Weight, double At)[] sorted = points.OrderBy(p => p.At).ToArray();
        double wanted = share * sorted.Sum(p => p.Weight),
            sum = 0;
        foreach ((double weight, double at) in sorted)
            if ((sum += weight) >= wanted)
                return at;
        return sorted[^1].At;
    }

    private static double Quantile(IReadOnlyList<(double Weight, double Mean, double Deviation)> parts, double share)
    {
        double low = parts.Min(p => p.Mean - 8 * p.Deviation),
            high = parts.Max(p => p.Mean + 8 * p.Deviation);
        for (int i = 0; i < 40; i++)
        {
            double middle = (low + high) / 2;
            if (Below(parts, middle) < share)
                low = middle;
            else
                high = middle;
        }
        return (low + high) / 2;
    }
}
