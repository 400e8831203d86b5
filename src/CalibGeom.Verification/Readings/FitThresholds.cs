using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Readings;

/// <summary>
/// At which mean clearance per side a joint changes from one felt fit to the next. Typical values without a source.
/// Immutable.
/// </summary>
public sealed record FitThresholds
{
    /// <summary>Thresholds.</summary>
    /// <param name="binds">Below it a joint refuses, mm. Default 0.</param>
    /// <param name="slides">From it on a joint slides, mm. Default 0.02.</param>
    /// <param name="rattles">From it on a joint rattles, mm. Default 0.07.</param>
    /// <param name="deviation">Standard deviation of each threshold between persons and parts, mm. Default
    /// 0.010.</param>
    /// <exception cref="ArgumentException">The thresholds do not rise or the deviation is not above 0.</exception>
    public FitThresholds(double binds = 0, double slides = 0.02, double rattles = 0.07, double deviation = 0.010)
    {
        if (!(binds < slides && slides < rattles && double.IsFinite(binds) && double.IsFinite(rattles)))
            throw new ArgumentException(
                FormattableString.Invariant($"Thresholds must rise, not {binds}, {slides}, {rattles} mm."),
                nameof(slides)
            );
        Binds = binds;
        Slides = slides;
        Rattles = rattles;
        if (!(deviation > 0 && deviation <= 1))
            throw new ArgumentException(
                FormattableString.Invariant($"deviation is {deviation}; it is over 0 and at most 1 mm."),
                nameof(deviation)
            );
        Deviation = deviation;
    }

    /// <summary>The defaults.</summary>
    public static FitThresholds Default { get; } = new();

    /// <summary>Below it a joint refuses, mm.</summary>
    public double Binds { get; }

    /// <summary>From it on a joint slides, mm.</summary>
    public double Slides { get; }

    /// <summary>From it on a joint rattles, mm.</summary>
    public double Rattles { get; }

    /// <summary>Standard deviation of each threshold, mm.</summary>
    public double Deviation { get; }

    /// <summary>The probability of a felt fit at a mean clearance.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="clearance">The mean clearance per side in mm.</param>
    public double Probability(FeltFit fit, double clearance)
    {
        (double low, double high) = fit switch
        {
            FeltFit.Refuses => (double.NegativeInfinity, Binds),
            FeltFit.Binds => (Binds, Slides),
            FeltFit.Slides => (Slides, Rattles),
            _ => (Rattles, double.PositiveInfinity),
        };
        return Above(low, clearance) - Above(high, clearance);
    }

    /// <summary>
    /// The probability of a felt fit where the axes differ: the tighter one decides whether a box refuses, their mean
    /// decides the rest. All thresholds are moved together by one Gaussian error, so that the four probabilities add up
    /// to one.
    /// </summary>
    /// <param name="fit">The fit.</param>
    /// <param name="tighter">The smaller of the axes' clearances per side in mm.</param>
    /// <param name="mean">Their mean in mm, at least <paramref name="tighter"/>.</param>
    public double Probability(FeltFit fit, double tighter, double mean)
    {
        double seats = Above(Binds, tighter),
            slides = Math.Min(seats, Above(Slides, mean)),
            rattles = Math.Min(seats, Above(Rattles, mean));
        return fit switch
        {
            FeltFit.Refuses => 1 - seats,
            FeltFit.Binds => seats - slides,
            FeltFit.Slides => slides - rattles,
            _ => rattles,
        };
    }

    private double Above(double threshold, double clearance) =>
        double.IsInfinity(threshold) ? (threshold < 0 ? 1 : 0) : Normal.CDF(0, 1, (clearance - threshold) / Deviation);
}
