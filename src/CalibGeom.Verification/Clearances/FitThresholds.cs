using System.Globalization;
using CalibGeom.Verification.Readings;
using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// Where one felt fit ends and the next begins, by clearance per side in mm, and how much that differs between people and parts. The defaults are
/// typical values without a published source. Immutable.
/// </summary>
public sealed record FitThresholds
{
    /// <summary>Thresholds.</summary>
    /// <param name="refuses">Below this clearance a box refuses, mm. Default 0.</param>
    /// <param name="binds">Up to this it binds, mm; over <paramref name="refuses"/>. Default 0.02.</param>
    /// <param name="slides">Up to this it slides, above it rattles, mm; over <paramref name="binds"/>. Default 0.07.</param>
    /// <param name="standardDeviation">Standard deviation of all three, mm, over 0 and at most 0.2. Default 0.010.</param>
    /// <exception cref="ArgumentException">A value is out of range or out of order.</exception>
    public FitThresholds(double refuses = 0, double binds = 0.02, double slides = 0.07, double standardDeviation = 0.010)
    {
        if (!(Math.Abs(refuses) <= 1 && binds > refuses && slides > binds && slides <= 2))
            throw new ArgumentException(Say($"The thresholds {refuses}, {binds}, {slides} must ascend, from -1 to 2 mm."), nameof(refuses));
        if (!(standardDeviation > 0 && standardDeviation <= 0.2))
            throw new ArgumentException(Say($"standardDeviation is {standardDeviation}; it is over 0 and at most 0.2 mm."), nameof(standardDeviation));
        Refuses = refuses;
        Binds = binds;
        Slides = slides;
        StandardDeviation = standardDeviation;
    }

    /// <summary>The defaults.</summary>
    public static FitThresholds Default { get; } = new();

    /// <summary>Below this clearance a box refuses, mm.</summary>
    public double Refuses { get; }

    /// <summary>Up to this clearance it binds, mm.</summary>
    public double Binds { get; }

    /// <summary>Up to this clearance it slides, mm; above it rattles.</summary>
    public double Slides { get; }

    /// <summary>Standard deviation of the thresholds, mm.</summary>
    public double StandardDeviation { get; }

    /// <summary>
    /// The probability of a fit. The tighter axis decides whether a box refuses, the mean of the axes decides the rest; all thresholds are moved
    /// together by one Gaussian error, so that the four probabilities add up to one.
    /// </summary>
    /// <param name="fit">The fit.</param>
    /// <param name="tighter">The smaller of the axes' clearances, mm.</param>
    /// <param name="mean">Their mean, mm, at least <paramref name="tighter"/>.</param>
    public double Probability(FeltFit fit, double tighter, double mean)
    {
        double seats = At(tighter - Refuses), passesBinds = Math.Min(seats, At(mean - Binds)), passesSlides = Math.Min(seats, At(mean - Slides));
        return fit switch
        {
            FeltFit.Refuses => 1 - seats,
            FeltFit.Binds => seats - passesBinds,
            FeltFit.Slides => passesBinds - passesSlides,
            _ => passesSlides,
        };
    }

    private double At(double excess) => Normal.CDF(0, StandardDeviation, excess);

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
