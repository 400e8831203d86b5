using CalibGeom.Solids;

namespace CalibGeom.TestObjects.Specs;

/// <summary>
/// Turns the whole object on a solid wedge. Immutable; every value is checked when it is set, so that a spec that
/// exists is in range. Compares by value.
/// </summary>
public sealed record TiltSpec
{
    /// <summary>The level axis that the object turns about, by the right-hand rule. Default "x".</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not one of the values.</exception>
    public TiltAxis Axis
    {
        get;
        init => field = SpecParameters.TiltAxis.RequireDefined(value);
    } = TiltAxis.X;

    /// <summary>Angle of the tilt; 0 stands level without a wedge. Range -45 to 45 deg. Default 0 deg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double Angle
    {
        get;
        init => field = SpecParameters.TiltAngle.Require(value);
    } = 0;
}
