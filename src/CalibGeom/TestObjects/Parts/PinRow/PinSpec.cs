namespace CalibGeom.TestObjects.Parts.PinRow;

/// <summary>
/// Round pins of graded diameter, each beside a hole of the same diameter: what pins gain and holes lose on curved
/// faces. Immutable; every value is checked when it is set, so that a spec that exists is in range. Compares by value.
/// </summary>
public sealed record PinSpec
{
    /// <summary>Diameters, ascending. Range 1 to 12 entries, each 0.5 to 12 mm. Default [1, 1.6, 2.5, 4] mm.</summary>
    /// <exception cref="ArgumentException">Too few or too many entries, or one out of range.</exception>
    public ValueList<double> Diameters
    {
        get;
        init => field = PinParameters.Diameters.Require(value);
    } = [1, 1.6, 2.5, 4];

    /// <summary>Height of each pin and of the block with the holes. Range 3 to 30 mm. Default 5 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double Height
    {
        get;
        init => field = PinParameters.Height.Require(value);
    } = 5;
}
