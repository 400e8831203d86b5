namespace CalibGeom.TestObjects.Parts.Bridge;

/// <summary>
/// A beam over two posts: light that passes through it cures resin below, so that it comes out thicker by the
/// print-through, which a caliper reads. Immutable; every value is checked when it is set, so that a spec that
/// exists is in range. Compares by value.
/// </summary>
public sealed record BridgeSpec
{
    /// <summary>Thickness of the beam. Range 1 to 6 mm. Default 2 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double Thickness
    {
        get;
        init => field = BridgeParameters.Thickness.Require(value);
    } = 2;
}
