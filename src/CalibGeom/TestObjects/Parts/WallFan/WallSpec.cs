namespace CalibGeom.TestObjects.Parts.WallFan;

/// <summary>
/// Upright walls of graded thickness: the thinnest that stands straight tells what walls may be asked of a process.
/// Immutable; every value is checked when it is set, so that a spec that exists is in range. Compares by value.
/// </summary>
public sealed record WallSpec
{
    /// <summary>
    /// Thicknesses, ascending. Range 1 to 16 entries, each 0.05 to 3 mm. Default [0.1, 0.125, 0.16, 0.2, 0.25, 0.315,
    /// 0.4, 0.5] mm.
    /// </summary>
    /// <exception cref="ArgumentException">Too few or too many entries, or one out of range.</exception>
    public ValueList<double> Thicknesses
    {
        get;
        init => field = WallParameters.Thicknesses.Require(value);
    } = [0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5];

    /// <summary>Height of each wall. Range 1 to 40 mm. Default 5 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double Height
    {
        get;
        init => field = WallParameters.Height.Require(value);
    } = 5;

    /// <summary>Length of each wall. Range 1 to 60 mm. Default 5 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double Length
    {
        get;
        init => field = WallParameters.Length.Require(value);
    } = 5;
}
