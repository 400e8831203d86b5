namespace CalibGeom.TestObjects.Parts.SlotComb;

/// <summary>
/// A comb of tunnels of graded height: the lowest open one brackets the print-through. Immutable; every value is
/// checked when it is set, so that a spec that exists is in range. Compares by value.
/// </summary>
public sealed record SlotsSpec
{
    /// <summary>
    /// Tunnel heights, ascending. Range 1 to 32 entries, each 0.02 to 5 mm. Default [0.16, 0.2, 0.25, 0.315, 0.4, 0.5,
    /// 0.63, 0.8] mm.
    /// </summary>
    /// <exception cref="ArgumentException">Too few or too many entries, or one out of range.</exception>
    public ValueList<double> Heights
    {
        get;
        init => field = SlotsParameters.Heights.Require(value);
    } = [0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8];
}
