using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.Columns;

/// <summary>The parameters of <see cref="ColumnsSpec"/>.</summary>
internal static class ColumnsParameters
{
    internal static readonly SpecParameter Diameters = new("columns", "diameters", SpecKind.Numbers)
    {
        Unit = "mm",
        Minimum = 0.05,
        Maximum = 6,
        MostEntries = 64,
        Meaning = "diameters square to the column's axis, ascending",
        Why = "R20 over a factor of three, so that some columns may be expected to fail and some to hold.",
    };

    internal static readonly SpecParameter Copies = new("columns", "copies", SpecKind.Count)
    {
        Minimum = 1,
        Maximum = 8,
        Meaning = "how many columns of each diameter",
        Why = "Two tell chance from size.",
    };

    internal static readonly SpecParameter Height = new("columns", "height", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 1,
        Maximum = 60,
        Meaning = "height from the plinth to the underside of the head's cone",
        Why = "Slender enough to fail; a preferred number (R5).",
    };

    internal static readonly SpecParameter HeadDiameter = new("columns", "headDiameter", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 0.2,
        Maximum = 12,
        Meaning = "diameter of each head; the load ratio is (head/column diameter)^2",
        Why = "A load ratio of 41 on the thinnest column and 4 on the thickest; a preferred number (R5).",
    };

    internal static readonly SpecParameter Pitch = new("columns", "pitch", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 0.5,
        Maximum = 30,
        Meaning = "distance between neighbouring columns",
        Why = "Resin drains between the heads; a preferred number (R5).",
    };

    internal static readonly SpecParameter Lean = new("columns", "lean", SpecKind.Number)
    {
        Unit = "deg",
        Maximum = 60,
        Meaning = "lean from vertical",
        Why = "Upright columns speak of exposure alone.",
    };

    internal static readonly SpecParameter Azimuth = new("columns", "azimuth", SpecKind.Number)
    {
        Unit = "deg",
        Minimum = -360,
        Maximum = 360,
        Meaning = "direction of the lean, counter-clockwise from +X seen from above",
        Why = "Toward the back; without effect while the lean is 0.",
    };

    internal static SpecGroup Group =>
        new("columns", true, [Diameters, Copies, Height, HeadDiameter, Pitch, Lean, Azimuth])
        {
            Meaning = "Round columns of equal height and graded diameter, each with a head that the film pulls on.",
            Basis = () => new ColumnsSpec(),
        };
}
