namespace CalibGeom.TestObjects.Specs;

/// <content>The parameters of <see cref="SqueezeSpec"/>.</content>
internal static partial class SpecParameters
{
    internal static readonly SpecParameter SqueezeHeights = new("squeeze", "heights", SpecKind.Numbers)
    {
        Unit = "mm",
        Minimum = 0.05,
        Maximum = 5,
        MostEntries = 20,
        Meaning = "heights of the slots from the plate upward, ascending",
        Why = "From 0.1 mm, so that little squeeze shows; every second of R10, then the next.",
    };

    internal static readonly SpecParameter SqueezeBar = new("squeeze", "bar", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 0.1,
        Maximum = 5,
        Meaning = "thickness of the bars below and between the slots",
        Why = "Holds while the plinth is scraped off, and lets hardly any light through; a preferred number (R10).",
    };
}
