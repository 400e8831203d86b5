namespace CalibGeom.Verification.Clearances;

/// <summary>
/// A face whose readings fit no scale and growth that the others allow. It does not count. Immutable.
/// </summary>
public sealed record GrossError
{
    /// <summary>The feature.</summary>
    public required FeatureId Feature { get; init; }

    /// <summary>The instrument; empty for the ordinary caliper.</summary>
    public required string Instrument { get; init; }

    /// <summary>Which of several prints, from 1.</summary>
    public required int Print { get; init; }

    /// <summary>Mean of its readings less what all other readings predict, mm.</summary>
    public required double Distance { get; init; }

    /// <summary>Standard uncertainty of <see cref="Distance"/>, mm.</summary>
    public required double StandardUncertainty { get; init; }

    /// <summary>
    /// The probability that chance alone puts any face as far off: that of one face times the number of faces.
    /// </summary>
    public required double Probability { get; init; }

    /// <summary>What it looks like, in words.</summary>
    public required string LooksLike { get; init; }

    /// <summary>What to do about it.</summary>
    public required string Remedy { get; init; }
}
