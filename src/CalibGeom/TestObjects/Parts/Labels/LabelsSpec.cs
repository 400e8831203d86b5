namespace CalibGeom.TestObjects.Parts.Labels;

/// <summary>
/// Raised strokes that name the object, the widths and the column diameters. Immutable; every value is checked when it
/// is set, so that a spec that exists is in range. Compares by value.
/// </summary>
public sealed record LabelsSpec
{
    /// <summary>How far the strokes stand out. Range 0.1 to 2 mm. Default 0.4 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double Height
    {
        get;
        init => field = LabelsParameters.Height.Require(value);
    } = 0.4;

    /// <summary>Width of the strokes. Range 0.1 to 2 mm. Default 0.4 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double Stroke
    {
        get;
        init => field = LabelsParameters.Stroke.Require(value);
    } = 0.4;
}
