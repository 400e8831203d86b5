using CalibGeom.Features;
using CalibGeom.Meshes;
using CalibGeom.Solids;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Parts;

namespace MyPart;

/// <summary>A tongue, and beside it a block with a groove that the tongue goes into. Sizes in mm.</summary>
/// <param name="tongue">Width of the tongue.</param>
/// <param name="clearance">Designed gap on each side.</param>
public sealed class TongueAndGroove(double tongue, double clearance) : ITestPart
{
    private const double Height = 6;
    private readonly double groove = tongue + 2 * clearance;

    /// <summary>Findings tell places by it.</summary>
    public string Name => "tongue";

    /// <summary>What is written on the plinth.</summary>
    public string Label => "TONGUE";

    /// <summary>What it covers, seen from above: the layout gives it a place.</summary>
    public PartFootprint Footprint => new([Rect.Centred(24, 6)], []);

    /// <summary>The solid: prisms that stand on the plinth and do not overlap.</summary>
    public IEnumerable<PartBody> Bodies(PartPlace place) =>
        [
            new("tongue", [Block(place, -12, tongue - 12)]),
            new("groove", [Block(place, 0, 6 - groove / 2), Block(place, 6 + groove / 2, 12)]),
        ];

    /// <summary>What to measure and feel. The mates of a fit make it a joint that predictions know.</summary>
    public IEnumerable<PartFeature> Features(PartPlace place)
    {
        Vector3D along = place.Direction(1, 0),
            overTongue = place.Point(tongue / 2 - 12, 0, place.BaseZ + Height / 2),
            inGroove = place.Point(6, 0, place.BaseZ + Height / 2);
        PartFeature inner = PartFeature.Size(
                "x",
                "outside jaws over the tongue",
                GaugeLine.Outside(FeatureId.Parse("tongue.width.x"), overTongue, along, tongue, tongue)
            ),
            outer = PartFeature.Size(
                "x",
                "inside jaws in the groove",
                GaugeLine.Inside(FeatureId.Parse("groove.width.x"), inGroove, along, groove, 6 - groove / 2)
            );
        Mate mate = Mate.Of(inner.Feature, outer.Feature);
        return [inner, outer, PartFeature.Fit(FeatureId.Parse("tongue.fit"), "put the tongue into the groove", mate)];
    }

    /// <summary>What is wrong with the design, before anything is printed.</summary>
    public IEnumerable<Finding> Check(PartPlace place) =>
        clearance <= 0 ? [Bad("The tongue does not enter.", "Give it some clearance.")]
        : groove > 11 ? [Bad("The groove leaves no walls beside it.", "Make the tongue narrower.")]
        : [];

    private Finding Bad(string message, string remedy) =>
        new("tongue-too-wide", Severity.Warning, Name, message, remedy);

    private static Loft Block(PartPlace place, double from, double to) =>
        Loft.Prism(place.Rectangle(from, -3, to, 3), place.BaseZ, place.BaseZ + Height);
}
