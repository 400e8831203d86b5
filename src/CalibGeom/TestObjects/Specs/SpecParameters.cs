using CalibGeom.TestObjects.Parts.PinRow;
using CalibGeom.TestObjects.Parts.WallFan;

namespace CalibGeom.TestObjects.Specs;

/// <summary>Every parameter of a spec, in the order that specs are written in.</summary>
internal static partial class SpecParameters
{
    internal static readonly SpecParameter Title = new("", "title", SpecKind.Text)
    {
        MostEntries = 40,
        Meaning = "what is written on the object, such as the resin's name; empty writes nothing",
        Why = "Empty: the resin's name is yours to give.",
    };

    /// <summary>The groups in order; the title stands before them.</summary>
    internal static IReadOnlyList<SpecGroup> Groups => LazyGroups.Value;

    /// <summary>The group with a JSON name, or null.</summary>
    internal static SpecGroup? FindGroup(string name) => Groups.FirstOrDefault(g => g.Name == name);

    private static readonly Lazy<SpecGroup[]> LazyGroups = new(MakeGroups);

    private static SpecGroup[] MakeGroups() =>
        [
            new(
                "process",
                true,
                [ProcessPixelPitch, ProcessLayerHeight, ProcessPlate, ProcessBaseLayers, ProcessBaseTime, ProcessSnap]
            )
            {
                Meaning =
                    "How the object will be printed. With it, gauge widths and column positions snap to whole "
                    + "pixels, and the design rules say what pixels and layers do to every size.",
            },
            new("plinth", false, [PlinthThickness, PlinthEdgeChamfer])
            {
                Meaning = "The rounded plate that everything stands on.",
            },
            new("nest", true, [NestSizes, NestClearances, NestWall, NestGaugeBand, NestPocketDepth])
            {
                Meaning =
                    "Square boxes that fit into each other. Box 1 is the innermost; joint j lies between box j "
                    + "and box j+1.",
            },
            new("spans", true, [SpansX, SpansY])
            {
                Meaning =
                    "Two pairs of posts whose far outside faces tell scale (which grows with length) from "
                    + "growth (which does not).",
            },
            new(
                "columns",
                true,
                [
                    ColumnsDiameters,
                    ColumnsCopies,
                    ColumnsHeight,
                    ColumnsHeadDiameter,
                    ColumnsPitch,
                    ColumnsLean,
                    ColumnsAzimuth,
                ]
            )
            {
                Meaning = "Round columns of equal height and graded diameter, each with a head that the film pulls on.",
            },
            new("slots", true, [SlotsHeights])
            {
                Meaning = "A comb of tunnels of graded height: the lowest open one brackets the print-through.",
            },
            new("squeeze", true, [SqueezeHeights, SqueezeBar])
            {
                Meaning =
                    "An upright tab with graded slots from the plate upward: how many are open shows how far the "
                    + "lowest layers were squeezed.",
            },
            PinParameters.Group,
            WallParameters.Group,
            new("labels", true, [LabelsHeight, LabelsStroke])
            {
                Meaning = "Raised strokes that name the object, the widths and the column diameters.",
            },
            new("tilt", false, [TiltAxis, TiltAngle]) { Meaning = "Turns the whole object on a solid wedge." },
        ];
}
