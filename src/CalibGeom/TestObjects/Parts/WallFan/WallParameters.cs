using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.WallFan;

/// <summary>The parameters of <see cref="WallSpec"/>.</summary>
internal static class WallParameters
{
    internal static readonly SpecParameter Thicknesses = new("walls", "thicknesses", SpecKind.Numbers)
    {
        Unit = "mm",
        Minimum = 0.05,
        Maximum = 3,
        MostEntries = 16,
        Meaning = "thicknesses of the walls, ascending",
        Why = "R10 over a factor of five, so that some walls may be expected to fail and some to stand.",
    };

    internal static readonly SpecParameter Height = new("walls", "height", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 1,
        Maximum = 40,
        Meaning = "height of each wall",
        Why = "Ten times the thickest; a preferred number (R10).",
    };

    internal static readonly SpecParameter Length = new("walls", "length", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 1,
        Maximum = 60,
        Meaning = "length of each wall",
        Why = "Long enough for a caliper's jaws; a preferred number (R10).",
    };

    internal static SpecGroup Group =>
        new("walls", true, [Thicknesses, Height, Length])
        {
            Meaning =
                "Upright walls of graded thickness: the thinnest that stands straight tells what walls can be asked.",
            Basis = () => new WallSpec(),
        };
}
