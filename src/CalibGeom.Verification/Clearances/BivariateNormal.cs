using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// Expectations over one or two correlated Gaussian clearances, by Gauss-Legendre quadrature over seven standard
/// deviations.
/// </summary>
internal static class BivariateNormal
{
    private const double Reach = 7;
    private const int Order = 64;
    private static readonly GaussLegendreRule Rule = new(-Reach, Reach, Order);

    /// <summary>The probability that both lie between two limits.</summary>
    internal static double BothBetween(
        double meanX,
        double uX,
        double meanY,
        double uY,
        double correlation,
        double low,
        double high
    )
    {
        if (uX <= 0)
            return meanX > low && meanX <= high ? Between(meanY, uY, low, high) : 0;
        if (uY <= 0)
            return meanY > low && meanY <= high ? Between(meanX, uX, low, high) : 0;
        double from = Math.Max(-Reach, (low - meanX) / uX),
            to = Math.Min(Reach, (high - meanX) / uX);
        if (from >= to)
            return 0;
        double rest = Math.Sqrt(Math.Max(1e-12, 1 - correlation * correlation));
        return GaussLegendreRule.Integrate(
            z => Normal.PDF(0, 1, z) * Between(meanY / uY + correlation * z, rest, low / uY, high / uY),
            from,
            to,
            Order
        );
    }

    internal static double Between(double mean, double u, double low, double high) =>
        u > 0 ? Normal.CDF(mean, u, high) - Normal.CDF(mean, u, low)
        : mean > low && mean <= high ? 1
        : 0;

    /// <summary>The mean of a function of both.</summary>
    internal static double Mean(
        Func<double, double, double> f,
        double meanX,
        double uX,
        double meanY,
        double uY,
        double correlation
    )
    {
        double rest = Math.Sqrt(Math.Max(0, 1 - correlation * correlation)),
            sum = 0,
            weight = 0;
        for (int i = 0; i < Order; i++)
        for (int j = 0; j < Order; j++)
        {
            double a = Rule.GetAbscissa(i),
                b = Rule.GetAbscissa(j);
            double w = Rule.GetWeight(i) * Rule.GetWeight(j) * Math.Exp(-(a * a + b * b) / 2);
            sum += w * f(meanX + uX * a, meanY + uY * (correlation * a + rest * b));
            weight += w;
        }
        return sum / weight;
    }
}
