namespace CalibGeom.Verification.Trends;

/// <summary>What has changed, since when and how fast. Immutable.</summary>
public sealed record TrendChange
{
    /// <summary>The change of ln(light) by now, supposing that it is light. Negative = less light.</summary>
    public required Amount LogLight { get; init; }

    /// <summary>What exposure takes back best, with the probability that it does; null when nothing speaks for
    /// light.</summary>
    public DoseLost? Correction { get; init; }

    /// <summary>The change of growth per edge by now, mm; null when no coupon tells growth.</summary>
    public Amount? Growth { get; init; }

    /// <summary>The change of print-through by now, mm; null when no coupon has a comb or a bridge.</summary>
    public Amount? PrintThrough { get; init; }

    /// <summary>
    /// The probability that chance made it look so, and that nothing moved by more than moves unseen (ln(light) by 0.1,
    /// one standard deviation). The intervals of light, growth and print-through and the correction allow for it; all
    /// else supposes that it was no chance.
    /// </summary>
    public required double ChanceProbability { get; init; }

    /// <summary>
    /// The probability that it is light, which moves all gauges in proportion, and not one gauge alone.
    /// </summary>
    public required double LightProbability { get; init; }

    /// <summary>The probability that it goes on, rather than having been a step.</summary>
    public required double DriftProbability { get; init; }

    /// <summary>The change of ln(light) from one coupon to the next, supposing that it goes on.</summary>
    public required Amount PerCoupon { get; init; }

    /// <summary>
    /// When it began, in days after the first coupon of the segment (in coupons where days are not known), with its 95
    /// % interval.
    /// </summary>
    public required Amount Since { get; init; }

    /// <summary>
    /// The probability that clearance or light has left the tolerance by now, supposing that it was no chance.
    /// </summary>
    public required double BeyondProbability { get; init; }

    /// <summary>
    /// When it will, in the unit of <see cref="Since"/>, supposing that it goes on; null where it has, or where it is
    /// rather a step. An upper end of infinity is far away.
    /// </summary>
    public Amount? Crosses { get; init; }

    // A verdict says what is rather so than not, chance counted in.
    internal bool IsRatherChance => ChanceProbability >= 0.5;

    internal bool IsRatherBeyond => Beyond >= 0.5;

    /// <summary>The probability that the tolerance is left, whether chance made it look so or not.</summary>
    internal double Beyond => (1 - ChanceProbability) * BeyondProbability;

    /// <summary>The change of light as a share: -0.06 for 6 % less.</summary>
    public Amount Light => new(Math.Exp(LogLight.Value) - 1, Math.Exp(LogLight.Low) - 1, Math.Exp(LogLight.High) - 1);
}
