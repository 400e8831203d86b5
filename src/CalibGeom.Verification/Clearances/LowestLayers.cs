namespace CalibGeom.Verification.Clearances;

/// <summary>
/// Height that the lowest layers lost: nominal less measured thickness of the plinth, which stands on the plate, with
/// the shift that all box heights share, and the squeeze tab as a check. Immutable.
/// </summary>
public sealed record LowestLayers
{
    /// <summary>Height lost, mm; negative where it came out too thick.</summary>
    public required Estimate Lost { get; init; }

    /// <summary>Whether it is distinct from zero (5 %).</summary>
    public required bool Distinct { get; init; }

    /// <summary>
    /// Whether the squeeze tab's count says otherwise: its bracket and the 95 % interval do not meet. Null without a
    /// count.
    /// </summary>
    public required bool? TabDisagrees { get; init; }

    internal static LowestLayers? Of(IReadOnlyList<MatchedReadings> prints, PredictionOptions options, Bracket? squeeze)
    {
        Estimate? lost = VerticalGauges.LostOf(prints, options);
        if (lost is null)
            return null;
        bool? disagrees = squeeze is { } b ? b.Low > lost.Interval.High || b.High < lost.Interval.Low : null;
        return new LowestLayers
        {
            Lost = lost,
            Distinct = lost.Interval.Low > 0 || lost.Interval.High < 0,
            TabDisagrees = disagrees,
        };
    }
}
