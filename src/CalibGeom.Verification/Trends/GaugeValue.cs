namespace CalibGeom.Verification.Trends;

/// <summary>What one coupon says about one gauge. Immutable.</summary>
public sealed record GaugeValue
{
    /// <summary>A value.</summary>
    /// <param name="gauge">What was read.</param>
    /// <param name="series">Values of one series share what is constant in them (the caliper's bias, the place on the
    /// plate, the object), so that it cancels in their differences; values of different series are never
    /// subtracted.</param>
    /// <param name="value">The value, mm (for columns ln mm), -20 to 20.</param>
    /// <param name="kin">Series of the same kin differ by little, see <see cref="TrendOptions.BetweenSeries"/>: the
    /// same caliper on another object, or at another place. Empty for none.</param>
    /// <param name="uncertainty">Its standard uncertainty without what the series shares and without what differs
    /// between prints, in the same unit, above 0 and at most 5.</param>
    /// <exception cref="ArgumentException">A number is out of range or the series has no name.</exception>
    public GaugeValue(Gauge gauge, string series, double value, double uncertainty, string kin = "")
    {
        ArgumentException.ThrowIfNullOrEmpty(series);
        ArgumentNullException.ThrowIfNull(kin);
        if (!Enum.IsDefined(gauge))
            throw new ArgumentException($"There is no gauge {gauge}.", nameof(gauge));
        Gauge = gauge;
        Series = series;
        Kin = kin;
        Value = Require.Within(value, -20, 20, "value", "", nameof(value));
        Uncertainty = Require.Positive(uncertainty, 5, "uncertainty", "", nameof(uncertainty));
    }

    /// <summary>What was read.</summary>
    public Gauge Gauge { get; }

    /// <summary>The series it belongs to.</summary>
    public string Series { get; }

    /// <summary>What other series it is compared with, if only roughly.</summary>
    public string Kin { get; }

    /// <summary>The value, mm (for columns ln mm).</summary>
    public double Value { get; }

    /// <summary>Its standard uncertainty, see the constructor.</summary>
    public double Uncertainty { get; }

    /// <summary>
    /// Whether it is the word of a felt fit: a range, in which the truth moves unseen. Default false.
    /// </summary>
    public bool Felt { get; init; }

    /// <summary>
    /// Whether it was counted, as a comb and columns are: it is the middle of a step, in which the truth moves unseen.
    /// Default false: it was read off a scale.
    /// </summary>
    public bool Counted { get; init; }
}
