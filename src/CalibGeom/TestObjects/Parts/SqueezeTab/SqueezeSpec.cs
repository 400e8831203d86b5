namespace CalibGeom.TestObjects.Parts.SqueezeTab;

/// <summary>
/// An upright tab with graded slots from the plate upward, the lowest first: how many are open shows how far the lowest
/// layers were squeezed. Immutable; every value is checked when it is set, so that a spec that exists is in range.
/// Compares by value.
/// </summary>
public sealed record SqueezeSpec
{
    /// <summary>
    /// Heights of the slots from the plate upward, ascending. Range 1 to 20 entries, each 0.05 to 5 mm. Default [0.1,
    /// 0.16, 0.25, 0.4, 0.5] mm.
    /// </summary>
    /// <exception cref="ArgumentException">Too few or too many entries, or one out of range.</exception>
    public ValueList<double> Heights
    {
        get;
        init => field = SqueezeParameters.Heights.Require(value);
    } = [0.1, 0.16, 0.25, 0.4, 0.5];

    /// <summary>Thickness of the bars below and between the slots. Range 0.1 to 5 mm. Default 0.4 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double Bar
    {
        get;
        init => field = SqueezeParameters.Bar.Require(value);
    } = 0.4;
}
