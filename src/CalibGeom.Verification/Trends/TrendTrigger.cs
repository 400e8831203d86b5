namespace CalibGeom.Verification.Trends;

/// <summary>What calls for a new calibration whatever the coupons show. Immutable.</summary>
/// <param name="Rule">Its name, such as <c>trend-layer</c>.</param>
/// <param name="Reason">A sentence.</param>
public sealed record TrendTrigger(string Rule, string Reason);
