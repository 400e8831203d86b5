namespace CalibGeom.Objects;

/// <summary>Where a coupon stands on its plate. Immutable.</summary>
/// <param name="Label">Its label, such as <c>A1</c>; empty for a single coupon.</param>
/// <param name="X">How far its own origin was moved along X, mm.</param>
/// <param name="Y">How far its own origin was moved along Y, mm.</param>
/// <param name="Z">How far it was lifted, mm.</param>
/// <param name="Turn">0 or 90 degrees counter-clockwise about its own Z axis, before it was moved.</param>
public sealed record ObjectCoupon(string Label, double X, double Y, double Z, int Turn)
{
    /// <summary>Its own exposure of a normal layer, s; null when it has that of the plate. Default null.</summary>
    public double? Exposure { get; init; }
}
