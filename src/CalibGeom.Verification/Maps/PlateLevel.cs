namespace CalibGeom.Verification.Maps;

/// <summary>How level the plate was, from the thickness of the coupons' plinths. Immutable.</summary>
/// <param name="Test">The test of a plane against the same thickness everywhere.</param>
/// <param name="AlongX">Rise of the thickness from the left edge of the plate to the right, mm.</param>
/// <param name="AlongY">Rise from the front edge to the back, mm.</param>
public sealed record PlateLevel(NestedTest Test, double AlongX, double AlongY)
{
    /// <summary>Whether a tilt is claimed.</summary>
    public bool Tilted => Test.Probability < 0.05;
}
