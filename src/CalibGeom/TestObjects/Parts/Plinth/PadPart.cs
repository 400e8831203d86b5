using CalibGeom.Meshes;
using CalibGeom.TestObjects.Rules;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.Plinth;

/// <summary>The flat pad at the plinth's edge, without chamfer below, where its thickness is measured.</summary>
internal sealed class PadPart(PlinthSpec spec, double plinthTop) : ITestPart
{
    /// <summary>What stands beside the pad keeps off it, mm: a jaw is not quite straight.</summary>
    private const double Room = 0.3;

    public string Name => "pad";

    /// <summary>The pad, and room beside the plinth for a jaw twice as deep.</summary>
    public PartFootprint Footprint =>
        new(
            [new Rect(-Proportions.PadWidth / 2, -Proportions.PadDepth, Proportions.PadWidth / 2, 0)],
            [
                new Lane(
                    new Rect(-Proportions.PadWidth / 2, 0, Proportions.PadWidth / 2, 2 * Proportions.PadDepth),
                    LaneKind.Open
                ),
            ]
        )
        {
            Gap = Room,
            Height = PartHeight.Flat,
            AtEdge = true,
        };

    public Finding? MissingWhenTilted =>
        Judge.Note(
            "tilt-without-thickness",
            KnownFeatures.PlinthThickness,
            "A tilted object has no pad for the plinth's thickness: a wedge is below the plinth."
        );

    /// <summary>The pad of an object.</summary>
    internal static IEnumerable<ITestPart> Parts(TestObjectSpec spec, double plinthTop) =>
        [new PadPart(spec.Plinth, plinthTop)];

    public IEnumerable<PartBody> Bodies(PartPlace place) => [];

    public IEnumerable<PartFeature> Features(PartPlace place) =>
        [
            PartFeature.Size(
                "z",
                $"outside jaws over the flat pad, the place without chamfer at the {SideOf(place)} edge",
                GaugeLine.Outside(
                    KnownFeatures.PlinthThickness,
                    place.Point(0, -Proportions.PadDepth / 2, plinthTop / 2),
                    new Vector3D(0, 0, 1),
                    plinthTop,
                    plinthTop
                )
            ),
        ];

    public IEnumerable<Finding> Check(PartPlace place) =>
        place.Spec.Process is { } process
            ? [SizeNotes.Layers(KnownFeatures.PlinthThickness, spec.Thickness, process.LayerHeight)]
            : [];

    private static string SideOf(PartPlace place) => ((Side)(place.Quarters & 3)).ToString().ToLowerInvariant();
}
