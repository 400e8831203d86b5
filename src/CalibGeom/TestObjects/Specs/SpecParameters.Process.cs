namespace CalibGeom.TestObjects.Specs;

/// <content>The parameters of <see cref="ProcessSpec"/>.</content>
internal static partial class SpecParameters
{
    internal static readonly SpecParameter ProcessPixelPitch = new("process", "pixelPitch", SpecKind.PerAxis)
    {
        Unit = "mm",
        Minimum = 0.005,
        Maximum = 0.5,
        Meaning = "size of one pixel on the plate; one number, or [x, y] where the two differ",
        Why = "A pitch of masked displays (common practice); take the printer's own.",
    };

    internal static readonly SpecParameter ProcessLayerHeight = new("process", "layerHeight", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 0.005,
        Maximum = 0.5,
        Meaning = "height of one layer",
        Why = "The usual layer height of resin printers (common practice).",
    };

    internal static readonly SpecParameter ProcessPlate = new("process", "plate", SpecKind.Size)
    {
        Unit = "mm",
        Minimum = 10,
        Maximum = 1000,
        Meaning = "build volume [x, y, z] that the object must fit into",
        Why = "A small desktop machine; take the printer's own.",
    };

    internal static readonly SpecParameter ProcessBaseLayers = new("process", "baseLayers", SpecKind.Count)
    {
        Maximum = 100,
        Meaning = "how many layers at the plate are exposed for the base time",
        Why = "Enough to hold without thickening the foot much (common practice).",
    };

    internal static readonly SpecParameter ProcessBaseTime = new("process", "baseTime", SpecKind.Number)
    {
        Unit = "s",
        Maximum = 600,
        Meaning = "exposure time of each base layer",
        Why = "Several times a usual exposure time (common practice).",
    };

    internal static readonly SpecParameter ProcessSnap = new("process", "snap", SpecKind.Word)
    {
        Words = ["pixels", "none"],
        Meaning = "\"pixels\" moves gauge widths and column positions onto whole pixels, \"none\" leaves them as given",
        Why = "A width of whole pixels prints the same wherever its edges fall on the pixel grid.",
    };
}
