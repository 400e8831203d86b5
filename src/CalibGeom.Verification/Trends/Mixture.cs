using CalibGeom.Verification.Uncertainty;
using MathNet.Numerics.RootFinding;

namespace CalibGeom.Verification.Trends;

/// <summary>Quantiles of normal and of uniform laws mixed by weight, and of weighted points.</summary>
internal static class Mixture
{
    internal static Amount Of((double Weight, double Mean, double Deviation)[] parts) =>
        new(
            QuantileOfNormals(parts, 0.5),
            QuantileOfNormals(parts, Coverage.LowerTail),
            QuantileOfNormals(parts, Coverage.UpperTail)
        );

    internal static double Below((double Weight, double Mean, double Deviation)[] parts, double value)
    {
        double below = 0,
            all = 0;
        foreach ((double weight, double mean, double deviation) in parts)
        {
            all += weight;
            below += weight * NormalTable.Below(mean, Math.Max(deviation, 1e-12), value);
        }
        return below / all;
    }

    /// <summary>The points below which half, the lower and the upper tail of the weight lie; infinity counts.</summary>
    internal static Amount Of(IEnumerable<(double Weight, double At)> points)
    {
        (double Weight, double At)[] sorted = points.OrderBy(p => p.At).ToArray();
        double all = sorted.Sum(p => p.Weight);
        double Quantile(double share)
        {
            double sum = 0;
            foreach ((double weight, double at) in sorted)
                if ((sum += weight) >= share * all)
                    return at;
            return sorted[^1].At;
        }
        return new Amount(Quantile(0.5), Quantile(Coverage.LowerTail), Quantile(Coverage.UpperTail));
    }

    /// <summary>The point below which a share of uniform laws, mixed by weight, lies.</summary>
    internal static double Quantile((double Weight, double Low, double High)[] spans, double share)
    {
        double all = spans.Sum(s => s.Weight);
        double Below(double at) =>
            spans.Sum(s =>
                s.Weight
                * (
                    at >= s.High ? 1
                    : at <= s.Low ? 0
                    : (at - s.Low) / (s.High - s.Low)
                )
            ) / all;
        return Where(Below, share, spans.Min(s => s.Low), spans.Max(s => s.High));
    }

    /// <summary>The point below which a share of normal laws, mixed by weight, lies.</summary>
    internal static double QuantileOfNormals((double Weight, double Mean, double Deviation)[] parts, double share) =>
        Where(
            at => Below(parts, at),
            share,
            parts.Min(p => p.Mean - 8 * p.Deviation),
            parts.Max(p => p.Mean + 8 * p.Deviation)
        );

    // Brent's method falls back on halving, where a law is a jump, and then needs some forty steps.
    private static double Where(Func<double, double> below, double share, double low, double high) =>
        below(low) >= share ? low
        : below(high) <= share ? high
        : Brent.FindRoot(at => below(at) - share, low, high, 1e-9 * (high - low), 500);
}
