using CalibGeom.TestObjects.Parts.Bridge;
using CalibGeom.TestObjects.Parts.Columns;
using CalibGeom.TestObjects.Parts.Nest;
using CalibGeom.TestObjects.Parts.PinRow;
using CalibGeom.TestObjects.Parts.Plinth;
using CalibGeom.TestObjects.Parts.SlotComb;
using CalibGeom.TestObjects.Parts.Spans;
using CalibGeom.TestObjects.Parts.SqueezeTab;
using CalibGeom.TestObjects.Parts.WallFan;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts;

/// <summary>
/// The parts that a spec asks for, tilted or not, in the order of the feature table; labels follow from them. A new
/// part of the project is named here once.
/// </summary>
internal static class ObjectParts
{
    internal static IReadOnlyList<ITestPart> Of(TestObjectSpec spec, PixelGrid pixels, double plinthTop) =>
        [
            .. NestPlan.Parts(spec, pixels),
            .. SpanPart.Parts(spec, pixels),
            .. PadPart.Parts(spec, plinthTop),
            .. ColumnsPart.Parts(spec, pixels),
            .. CombPart.Parts(spec, plinthTop),
            .. BridgePart.Parts(spec, plinthTop),
            .. TabPart.Parts(spec, plinthTop),
            .. PinPart.Parts(spec),
            .. WallPart.Parts(spec, pixels),
            .. spec.OwnParts,
        ];
}
