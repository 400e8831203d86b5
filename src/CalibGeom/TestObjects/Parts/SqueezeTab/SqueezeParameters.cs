using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.SqueezeTab;

/// <summary>The parameters of <see cref="SqueezeSpec"/>.</summary>
internal static class SqueezeParameters
{
    internal static readonly SpecParameter Heights = new("squeeze", "heights", SpecKind.Numbers)
    {
        Unit = "mm",
        Minimum = 0.05,
        Maximum = 5,
        MostEntries = 20,
        Meaning = "heights of the slots from the plate upward, ascending",
        Why = "From 0.1 mm, so that little squeeze shows; every second of R10, then the next.",
    };

    internal static readonly SpecParameter Bar = new("squeeze", "bar", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 0.1,
        Maximum = 5,
        Meaning = "thickness of the bars below and between the slots",
        Why = "Holds while the plinth is scraped off, and lets hardly any light through; a preferred number (R10).",
    };

    internal static SpecGroup Group =>
        new("squeeze", true, [Heights, Bar])
        {
            Meaning =
                "An upright tab with graded slots from the plate upward: how many are open shows how far the "
                + "lowest layers were squeezed.",
            Basis = () => new SqueezeSpec(),
        };
}
