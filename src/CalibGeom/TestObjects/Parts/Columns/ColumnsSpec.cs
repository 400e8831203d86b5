namespace CalibGeom.TestObjects.Parts.Columns;

/// <summary>
/// Round columns of equal height and graded diameter, each with a head that the film pulls on. Immutable; every value
/// is checked when it is set, so that a spec that exists is in range. Compares by value.
/// </summary>
public sealed record ColumnsSpec
{
    /// <summary>
    /// Diameters square to the column's axis, ascending. Range 1 to 64 entries, each 0.05 to 6 mm. Default [0.25, 0.28,
    /// 0.315, 0.355, 0.4, 0.45, 0.5, 0.56, 0.63, 0.71, 0.8] mm.
    /// </summary>
    /// <exception cref="ArgumentException">Too few or too many entries, or one out of range.</exception>
    public ValueList<double> Diameters
    {
        get;
        init => field = ColumnsParameters.Diameters.Require(value);
    } = [0.25, 0.28, 0.315, 0.355, 0.4, 0.45, 0.5, 0.56, 0.63, 0.71, 0.8];

    /// <summary>How many columns of each diameter. Range 1 to 8. Default 2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public int Copies
    {
        get;
        init => field = ColumnsParameters.Copies.Require(value);
    } = 2;

    /// <summary>Height from the plinth to the underside of the head's cone. Range 1 to 60 mm. Default 6.3 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double Height
    {
        get;
        init => field = ColumnsParameters.Height.Require(value);
    } = 6.3;

    /// <summary>
    /// Diameter of each head; the load ratio is (head/column diameter)^2. Range 0.2 to 12 mm. Default 1.6 mm.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double HeadDiameter
    {
        get;
        init => field = ColumnsParameters.HeadDiameter.Require(value);
    } = 1.6;

    /// <summary>Distance between neighbouring columns. Range 0.5 to 30 mm. Default 4.0 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double Pitch
    {
        get;
        init => field = ColumnsParameters.Pitch.Require(value);
    } = 4.0;

    /// <summary>Lean from vertical. Range 0 to 60 deg. Default 0 deg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double Lean
    {
        get;
        init => field = ColumnsParameters.Lean.Require(value);
    } = 0;

    /// <summary>
    /// Direction of the lean, counter-clockwise from +X seen from above. Range -360 to 360 deg. Default 90 deg.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double Azimuth
    {
        get;
        init => field = ColumnsParameters.Azimuth.Require(value);
    } = 90;
}
