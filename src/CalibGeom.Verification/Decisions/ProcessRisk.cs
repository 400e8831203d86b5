using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;

namespace CalibGeom.Verification.Decisions;

/// <summary>
/// Risks over all items of a Gaussian process that are measured with a Gaussian error (JCGM 106:2012, 9.5): items
/// outside the tolerance that are accepted, and items inside it that are rejected. Immutable.
/// </summary>
public sealed record ProcessRisk
{
    private const double Reach = 8;
    private const int Order = 256;

    private ProcessRisk(double consumer, double producer)
    {
        Consumer = consumer;
        Producer = producer;
    }

    /// <summary>Share of all items that are accepted though they lie outside the tolerance.</summary>
    public double Consumer { get; }

    /// <summary>Share of all items that are rejected though they lie inside the tolerance.</summary>
    public double Producer { get; }

    /// <summary>The risks of accepting by measured values.</summary>
    /// <param name="tolerance">Where true values must lie.</param>
    /// <param name="acceptance">Where measured values are accepted.</param>
    /// <param name="mean">Mean of the process.</param>
    /// <param name="processDeviation">Standard deviation of true values, over 0.</param>
    /// <param name="u">Standard uncertainty of a measurement, over 0.</param>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public static ProcessRisk Of(
        ToleranceLimits tolerance,
        ToleranceLimits acceptance,
        double mean,
        double processDeviation,
        double u
    )
    {
        ArgumentNullException.ThrowIfNull(tolerance);
        ArgumentNullException.ThrowIfNull(acceptance);
        Require.Positive(processDeviation, double.MaxValue, "process deviation", "", nameof(processDeviation));
        Require.Positive(u, double.MaxValue, "standard uncertainty", "", nameof(u));
        double Accepted(double truth) => Normal.CDF(truth, u, acceptance.High) - Normal.CDF(truth, u, acceptance.Low);
        double Over(double from, double to, Func<double, double> f)
        {
            double a = Math.Max(from, mean - Reach * processDeviation),
                b = Math.Min(to, mean + Reach * processDeviation);
            return a >= b
                ? 0
                : GaussLegendreRule.Integrate(t => Normal.PDF(mean, processDeviation, t) * f(t), a, b, Order);
        }
        return new ProcessRisk(
            Over(double.NegativeInfinity, tolerance.Low, Accepted)
                + Over(tolerance.High, double.PositiveInfinity, Accepted),
            Over(tolerance.Low, tolerance.High, t => 1 - Accepted(t))
        );
    }
}
