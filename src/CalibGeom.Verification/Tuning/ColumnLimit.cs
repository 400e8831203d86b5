namespace CalibGeom.Verification.Tuning;

/// <summary>The column diameter that prints in half of all cases.</summary>
/// <param name="Diameter">d50 in mm; null where all stood or all were lost, which only bounds it.</param>
/// <param name="Low">Lower end of its 95 % interval, mm; 0 when open.</param>
/// <param name="High">Upper end, mm; infinite when open.</param>
public readonly record struct ColumnLimit(double? Diameter, double Low, double High);
