using CalibGeom.TestObjects.Parts.Bridge;
using CalibGeom.TestObjects.Parts.Columns;
using CalibGeom.TestObjects.Parts.Labels;
using CalibGeom.TestObjects.Parts.Nest;
using CalibGeom.TestObjects.Parts.PinRow;
using CalibGeom.TestObjects.Parts.Plinth;
using CalibGeom.TestObjects.Parts.SlotComb;
using CalibGeom.TestObjects.Parts.Spans;
using CalibGeom.TestObjects.Parts.SqueezeTab;
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
                Basis = () => new ProcessSpec(),
            },
            PlinthParameters.Group,
            NestParameters.Group,
            SpansParameters.Group,
            ColumnsParameters.Group,
            SlotsParameters.Group,
            BridgeParameters.Group,
            SqueezeParameters.Group,
            PinParameters.Group,
            WallParameters.Group,
            LabelsParameters.Group,
            new("tilt", false, [TiltAxis, TiltAngle])
            {
                Meaning = "Turns the whole object on a solid wedge.",
                Basis = () => new TiltSpec(),
            },
        ];
}
