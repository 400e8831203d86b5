namespace CalibGeom.Verification.Tuning;

/// <summary>One point of the curve of rest and exposure that holds the clearance on target. Immutable.</summary>
/// <param name="Rest">Rest, s.</param>
/// <param name="Time">Exposure, s.</param>
/// <param name="Low">Lower end of the 95 % interval of that exposure, s.</param>
/// <param name="High">Upper end, s.</param>
/// <param name="Gain">What a further second of rest gains, mm (most probable).</param>
/// <param name="Columns">The column limit there, or null without columns.</param>
/// <param name="PrintThrough">Print-through there in mm, or null without a slot comb.</param>
/// <param name="PrintTime">Print time in s at the production height.</param>
public sealed record CurvePoint(
    double Rest,
    double Time,
    double Low,
    double High,
    double Gain,
    ColumnLimit? Columns,
    double? PrintThrough,
    double PrintTime
);
