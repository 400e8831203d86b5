namespace CalibGeom.TestObjects.Specs;

/// <content>The parameters of <see cref="SqueezeSpec"/>.</content>
internal static partial class SpecParameters
{
    internal static readonly SpecParameter SqueezeSlots = new("squeeze", "slots", SpecKind.Count)
    {
        Minimum = 1,
        Maximum = 40,
        Meaning = "how many slots",
        Why = "Reaches 4 mm above the plate with the default pitch.",
    };

    internal static readonly SpecParameter SqueezeSlotHeight = new("squeeze", "slotHeight", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 0.05,
        Maximum = 5,
        Meaning = "height of each slot",
        Why = "Wider than print-through is expected to be; a preferred number (R10).",
    };

    internal static readonly SpecParameter SqueezePitch = new("squeeze", "pitch", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 0.1,
        Maximum = 10,
        Meaning = "distance from slot to slot, upward",
        Why = "Leaves bars of 0.3 mm, which hold; a preferred number (R10).",
    };
}
