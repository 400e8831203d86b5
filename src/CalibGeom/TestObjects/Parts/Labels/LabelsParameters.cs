using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.Labels;

/// <summary>The parameters of <see cref="LabelsSpec"/>.</summary>
internal static class LabelsParameters
{
    internal static readonly SpecParameter Height = new("labels", "height", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 0.1,
        Maximum = 2,
        Meaning = "how far the strokes stand out",
        Why = "Several layers high; a preferred number (R10).",
    };

    internal static readonly SpecParameter Stroke = new("labels", "stroke", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 0.1,
        Maximum = 2,
        Meaning = "width of the strokes",
        Why = "About ten pixels wide; a preferred number (R10).",
    };

    internal static SpecGroup Group =>
        new("labels", true, [Height, Stroke])
        {
            Meaning = "Raised strokes that name the object, the widths and the column diameters.",
            Basis = () => new LabelsSpec(),
        };
}
