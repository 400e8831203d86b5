namespace CalibGeom.TestObjects.Specs;

/// <content>The parameters of <see cref="LabelsSpec"/>.</content>
internal static partial class SpecParameters
{
    internal static readonly SpecParameter LabelsHeight = new("labels", "height", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 0.1,
        Maximum = 2,
        Meaning = "how far the strokes stand out",
        Why = "Several layers high; a preferred number (R10).",
    };

    internal static readonly SpecParameter LabelsStroke = new("labels", "stroke", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 0.1,
        Maximum = 2,
        Meaning = "width of the strokes",
        Why = "About ten pixels wide; a preferred number (R10).",
    };
}
