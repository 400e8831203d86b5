namespace CalibGeom.TestObjects.Specs;

/// <summary>An upright tab with equal slots from the plate upward: how many are open shows how far the lowest layers
/// were squeezed.
/// Immutable; every value is checked when it is set, so that a spec that exists is in range. Compares by
/// value.</summary>
public sealed record SqueezeSpec
{
    /// <summary>How many slots. Range 1 to 40. Default 5.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public int Slots
    {
        get;
        init => field = SpecParameters.SqueezeSlots.Require(value);
    } = 5;

    /// <summary>Height of each slot. Range 0.05 to 5 mm. Default 0.5 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double SlotHeight
    {
        get;
        init => field = SpecParameters.SqueezeSlotHeight.Require(value);
    } = 0.5;

    /// <summary>Distance from slot to slot, upward. Range 0.1 to 10 mm. Default 0.8 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double Pitch
    {
        get;
        init => field = SpecParameters.SqueezePitch.Require(value);
    } = 0.8;
}
