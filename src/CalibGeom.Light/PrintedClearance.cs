namespace CalibGeom.Light;

/// <summary>What light leaves of the clearance of a fit along one axis. Immutable.</summary>
/// <param name="Fit">The fit, such as <c>joint1.fit</c>.</param>
/// <param name="Axis"><c>x</c>, <c>y</c>, or empty for what is round.</param>
/// <param name="Value">mm per side, below 0 where the two overlap; null where one of them does not print.</param>
public sealed record PrintedClearance(FeatureId Fit, string Axis, double? Value);
