using CalibGeom.Verification.Clearances;

namespace CalibGeom.Verification.Logs;

/// <summary>
/// Print-through as one print's bridge shows it: light that passes through the beam cures resin below, so that it comes
/// out thicker than designed. Immutable.
/// </summary>
public sealed record BridgeReading
{
    private BridgeReading(double value, double uncertainty, string instrument) =>
        (Value, Uncertainty, Instrument) = (value, uncertainty, instrument);

    /// <summary>
    /// Print-through, mm: the mean of what was read less the design, -0.06 to 1; negative where the beam is thinner
    /// than designed.
    /// </summary>
    public double Value { get; }

    /// <summary>
    /// Its standard uncertainty from reading and form of the faces, mm, 0.006 to 0.01. What the caliper adds to all it
    /// reads is not in it: in differences of one caliper that cancels.
    /// </summary>
    public double Uncertainty { get; }

    /// <summary>The caliper's name.</summary>
    public string Instrument { get; }

    /// <summary>
    /// What the bridge of a print says; null where it was not read, or only by slips of the pen
    /// (<see cref="SlipRules.FarBridgeMm"/>, <see cref="SlipRules.ThinBridgeMm"/>), and where the comb of the same
    /// print contradicts it: the comb counts.
    /// </summary>
    /// <param name="trial">The print.</param>
    /// <exception cref="InputException">A reading is no thickness, or the log does not tell what was designed.</exception>
    public static BridgeReading? Of(Trial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        FeatureId id = KnownFeatures.BridgeThickness;
        string name = NameOf(trial);
        double[] read = ThicknessReadings.Of(trial, id, name);
        if (read.Length == 0)
            return null;
        if (!trial.Nominals.TryGetValue(id, out double nominal) || !ThicknessReadings.IsThickness(nominal))
            throw new InputException(
                InputIds.Log,
                $"{name}: {id} was read, but its nominal, above 0 and at most 1000 mm, is not told. Correct it in the log."
            );
        double[] through = [.. read.Select(mm => mm - nominal).Where(off => !SlipRules.IsNoBridge(off))];
        if (through.Length == 0)
            return null;
        double form = PredictionOptions.Default.FormError,
            deviation = Math.Sqrt(
                Readings.Instrument.DefaultRepeatability * Readings.Instrument.DefaultRepeatability / through.Length
                    + form * form
            );
        return Contradicts(trial.Slots, through.Average(), deviation)
            ? null
            : new BridgeReading(through.Average(), deviation, trial.Instrument);
    }

    // Where both were read the comb counts, as in a prediction.
    private static bool Contradicts(SlotOutcome? comb, double through, double deviation)
    {
        double reach =
            2
            * Math.Sqrt(
                deviation * deviation
                    + Readings.Instrument.DefaultOutsideError * Readings.Instrument.DefaultOutsideError
            );
        return comb is not null && (through + reach < comb.HighestClosed || through - reach > comb.LowestOpen);
    }

    private static string NameOf(Trial trial) =>
        trial.Place is { Label.Length: > 0 } place ? $"Coupon {place.Label}"
        : trial.Date is { } day ? FormattableString.Invariant($"The print of {day:yyyy-MM-dd}")
        : "A print";
}
