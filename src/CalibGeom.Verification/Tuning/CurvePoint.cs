namespace CalibGeom.Verification.Tuning;

/// <summary>One point of the curve of rest and exposure that holds the clearance on target. Immutable.</summary>
public sealed record CurvePoint
{
    /// <summary>Rest, s.</summary>
    public required double Rest { get; init; }

    /// <summary>Exposure, s.</summary>
    public required double Time { get; init; }

    /// <summary>Lower end of the 95 % interval of that exposure, s.</summary>
    public required double Low { get; init; }

    /// <summary>Upper end, s.</summary>
    public required double High { get; init; }

    /// <summary>What a further second of rest gains, mm (most probable).</summary>
    public required double Gain { get; init; }

    /// <summary>The column limit there, or null without columns.</summary>
    public required ColumnLimit? Columns { get; init; }

    /// <summary>Print-through there in mm, or null without a slot comb or a bridge.</summary>
    public required double? PrintThrough { get; init; }

    /// <summary>Print time in s at the production height.</summary>
    public required double PrintTime { get; init; }
}
