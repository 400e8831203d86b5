using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.Plinth;

/// <summary>The parameters of <see cref="PlinthSpec"/>.</summary>
internal static class PlinthParameters
{
    internal static readonly SpecParameter Thickness = new("plinth", "thickness", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 1,
        Maximum = 10,
        Meaning = "thickness, measured at the flat pad",
        Why = "Stiff enough to be scraped off; a preferred number (R5).",
    };

    internal static readonly SpecParameter EdgeChamfer = new("plinth", "edgeChamfer", SpecKind.Number)
    {
        Unit = "mm",
        Maximum = 5,
        Meaning = "height and width of the chamfer around the bottom; 0 leaves it out",
        Why = "Takes up flared first layers and lets a scraper in; a preferred number (R10).",
    };

    internal static SpecGroup Group =>
        new("plinth", false, [Thickness, EdgeChamfer])
        {
            Meaning = "The rounded plate that everything stands on.",
            Basis = () => new PlinthSpec(),
        };
}
