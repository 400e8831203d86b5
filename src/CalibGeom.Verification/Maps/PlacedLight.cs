using CalibGeom.Verification.Trends;

namespace CalibGeom.Verification.Maps;

/// <summary>The light at one coupon. Immutable.</summary>
/// <param name="Point">The coupon.</param>
/// <param name="Own">ln(light) less the mean of all coupons, from its own readings alone; null when it has none to
/// compare.</param>
/// <param name="Fitted">The same as the shape has it.</param>
public sealed record PlacedLight(MapPoint Point, Amount? Own, Amount Fitted);
