using System.Globalization;
using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Uncertainty;

/// <summary>Coverage factors and effective degrees of freedom.</summary>
public static class Coverage
{
    /// <summary>The level of confidence used throughout: 95 %.</summary>
    public const double Level = 0.95;

    /// <summary>The coverage factor of a normal distribution at <see cref="Level"/>: its 97.5 % point.</summary>
    public const double NormalFactor = 1.959963984540054;

    /// <summary>The share below the central interval at <see cref="Level"/>: 2.5 %.</summary>
    internal const double LowerTail = (1 - Level) / 2;

    /// <summary>The share below its upper end: 97.5 %.</summary>
    internal const double UpperTail = (1 + Level) / 2;

    /// <summary>The coverage factor of Student's t (JCGM 100, G.3). Degrees of freedom are not truncated.</summary>
    /// <param name="degreesOfFreedom">Over 0, maybe infinite.</param>
    /// <param name="probability">Between 0 and 1.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public static double StudentFactor(double degreesOfFreedom, double probability = Level)
    {
        Check(probability);
        if (!(degreesOfFreedom > 0))
            throw new ArgumentException("degreesOfFreedom must be over 0.", nameof(degreesOfFreedom));
        double quantile = 1 - (1 - probability) / 2;
        return degreesOfFreedom > 1e6
            ? MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, quantile)
            : StudentT.InvCDF(0, 1, degreesOfFreedom, quantile);
    }

    /// <summary>
    /// The coverage factor of a symmetric trapezoid (EA-4/02 M:2013, S10.13): k = (1 - sqrt((1-p)(1-b^2))) /
    /// sqrt((1+b^2)/6).
    /// </summary>
    /// <param name="beta">Top over base, 0 to 1.</param>
    /// <param name="probability">Between 0 and 1; at least 2 beta / (1 + beta), where the formula holds.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public static double TrapezoidalFactor(double beta, double probability = Level)
    {
        Check(probability);
        if (beta is not (>= 0 and <= 1))
            throw new ArgumentException("beta runs from 0 to 1.", nameof(beta));
        if (probability * (1 + beta) < 2 * beta)
            return probability * (1 + beta) / 2 / Math.Sqrt((1 + beta * beta) / 6);
        return (1 - Math.Sqrt((1 - probability) * (1 - beta * beta))) / Math.Sqrt((1 + beta * beta) / 6);
    }

    /// <summary>Effective degrees of freedom by Welch and Satterthwaite (JCGM 100, G.2b).</summary>
    /// <param name="contributions">Uncertainty contributions |c u| with their degrees of freedom, independent of each
    /// other.</param>
    internal static double EffectiveDegreesOfFreedom(
        IEnumerable<(double Contribution, double DegreesOfFreedom)> contributions
    )
    {
        double variance = 0,
            sum = 0;
        foreach ((double u, double nu) in contributions)
        {
            variance += u * u;
            sum += u * u * u * u / nu;
        }
        return sum > 0 ? variance * variance / sum : double.PositiveInfinity;
    }

    /// <summary>The two-sided probability that chance alone gives an estimate as far from zero.</summary>
    internal static double TwoSidedProbability(double estimate, double u, double degreesOfFreedom)
    {
        if (u == 0)
            return estimate == 0 ? 1 : 0;
        double t = Math.Abs(estimate) / u;
        return 2
            * (
                degreesOfFreedom > 1e6
                    ? MathNet.Numerics.Distributions.Normal.CDF(0, 1, -t)
                    : StudentT.CDF(0, 1, degreesOfFreedom, -t)
            );
    }

    private static void Check(double probability)
    {
        if (probability is not (> 0 and < 1))
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"probability is {probability}; it lies between 0 and 1."),
                nameof(probability)
            );
    }
}
