using CalibGeom.Verification.Uncertainty;
using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Decisions;

/// <summary>
/// Whether a measured value conforms, after ISO 14253-1:2017: accepted inside the limits less a guard band, rejected
/// outside them by one, with the specific risks of JCGM 106:2012. Immutable.
/// </summary>
public sealed record ConformityDecision
{
    private ConformityDecision(
        ToleranceLimits limits,
        double value,
        double u,
        double guardBand,
        double conformance,
        Verdict verdict
    )
    {
        Limits = limits;
        Value = value;
        StandardUncertainty = u;
        GuardBand = guardBand;
        ConformanceProbability = conformance;
        Verdict = verdict;
    }

    /// <summary>The limits.</summary>
    public ToleranceLimits Limits { get; }

    /// <summary>The measured value.</summary>
    public double Value { get; }

    /// <summary>Its standard uncertainty.</summary>
    public double StandardUncertainty { get; }

    /// <summary>
    /// Guard band g, in the unit of the value: one-sided coverage factor times the standard uncertainty, so that beyond
    /// it each verdict is right with probability 0.95 (k 1.645 for many degrees of freedom).
    /// </summary>
    public double GuardBand { get; }

    /// <summary>Probability that the true value lies within the limits (JCGM 106, 7.2).</summary>
    public double ConformanceProbability { get; }

    /// <summary>The verdict.</summary>
    public Verdict Verdict { get; }

    /// <summary>Probability that the true value lies outside, if one accepts it (specific consumer's risk).</summary>
    public double RiskOfAccepting => 1 - ConformanceProbability;

    /// <summary>Probability that the true value lies inside, if one rejects it (specific producer's risk).</summary>
    public double RiskOfRejecting => ConformanceProbability;

    /// <summary>A decision for a value whose probability distribution is a Student t.</summary>
    /// <param name="limits">The limits.</param>
    /// <param name="value">The value.</param>
    /// <param name="u">Its standard uncertainty, over 0.</param>
    /// <param name="degreesOfFreedom">Its effective degrees of freedom.</param>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public static ConformityDecision Of(
        ToleranceLimits limits,
        double value,
        double u,
        double degreesOfFreedom = double.PositiveInfinity
    ) => Of(limits, value, u, degreesOfFreedom, null);

    /// <summary>With a conformance probability that is known from elsewhere, such as draws.</summary>
    internal static ConformityDecision Of(
        ToleranceLimits limits,
        double value,
        double u,
        double degreesOfFreedom,
        double? conformance
    )
    {
        ArgumentNullException.ThrowIfNull(limits);
        Require.Positive(u, double.MaxValue, "standard uncertainty", "", nameof(u));
        // The two-sided factor for 0.90 leaves 0.05 on one side.
        double guard = Coverage.StudentFactor(degreesOfFreedom, 1 - 2 * (1 - Coverage.Level)) * u;
        double probability =
            conformance
            ?? Below((limits.High - value) / u, degreesOfFreedom) - Below((limits.Low - value) / u, degreesOfFreedom);
        Verdict verdict =
            value >= limits.Low + guard && value <= limits.High - guard ? Verdict.Conforms
            : value < limits.Low - guard || value > limits.High + guard ? Verdict.DoesNotConform
            : Verdict.CannotBeTold;
        return new ConformityDecision(limits, value, u, guard, Math.Clamp(probability, 0, 1), verdict);
    }

    private static double Below(double t, double freedom) =>
        double.IsPositiveInfinity(t) ? 1
        : double.IsNegativeInfinity(t) ? 0
        : freedom > 1e6 ? Normal.CDF(0, 1, t)
        : StudentT.CDF(0, 1, freedom, t);
}
