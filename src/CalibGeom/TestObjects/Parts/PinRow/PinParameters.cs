using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.PinRow;

/// <summary>The parameters of <see cref="PinSpec"/>.</summary>
internal static class PinParameters
{
    internal static readonly SpecParameter Diameters = new("pins", "diameters", SpecKind.Numbers)
    {
        Unit = "mm",
        Minimum = 0.5,
        Maximum = 12,
        MostEntries = 12,
        Meaning = "diameters of the pins and of the holes beside them, ascending",
        Why = "R5: sizes of common pins and screws; pin gauges of these sizes are easy to have.",
    };

    internal static readonly SpecParameter Height = new("pins", "height", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 3,
        Maximum = 30,
        Meaning = "height of each pin and of the block with the holes",
        Why = "Leaves two millimetres of straight hole above the vents; a preferred number (R10).",
    };

    internal static SpecGroup Group =>
        new("pins", true, [Diameters, Height])
        {
            Meaning =
                "Round pins, each beside a hole of the same diameter that opens to the back: what curved faces gain and lose.",
            Basis = () => new PinSpec(),
        };
}
