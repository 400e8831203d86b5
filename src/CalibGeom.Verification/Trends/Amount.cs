namespace CalibGeom.Verification.Trends;

/// <summary>A quantity with its 95 % interval.</summary>
/// <param name="Value">The median.</param>
/// <param name="Low">The 2.5 % point.</param>
/// <param name="High">The 97.5 % point.</param>
public readonly record struct Amount(double Value, double Low, double High);
