using CalibGeom.Meshes;
using CalibGeom.Solids;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Parts;

namespace CalibGeom.OwnPart;

/// <summary>
/// A part as a developer would add it: a key, and beside it a block with a groove that the key goes into.
/// </summary>
/// <param name="key">Width of the key, mm.</param>
/// <param name="groove">Width of the groove, mm.</param>
public sealed class Keyway(double key, double groove) : ITestPart
{
    public string Name => "keyway";

    public string Label => "KEY";

    public PartFootprint Footprint => new([Rect.Centred(12, 6)], []);

    public IEnumerable<PartBody> Bodies(PartPlace place) =>
        [
            new("key", [Block(place, -6, key - 6)]),
            new("groove", [Block(place, 0, 3 - groove / 2), Block(place, 3 + groove / 2, 6)]),
        ];

    public IEnumerable<PartFeature> Features(PartPlace place)
    {
        Vector3D along = place.Direction(1, 0),
            overKey = place.Point(key / 2 - 6, 0, place.BaseZ + 3),
            inGroove = place.Point(3, 0, place.BaseZ + 3);
        var width = GaugeLine.Outside(FeatureId.Parse("key.width.x"), overKey, along, key, key);
        var gap = GaugeLine.Inside(FeatureId.Parse("groove.width.x"), inGroove, along, groove, 3 - groove / 2);
        PartFeature inner = PartFeature.Size("x", "outside jaws over the key", width),
            outer = PartFeature.Size("x", "inside jaws in the groove", gap);
        Mate mate = Mate.Of(inner.Feature, outer.Feature);
        return [inner, outer, PartFeature.Fit(FeatureId.Parse("keyway.fit"), "put the key into the groove", mate)];
    }

    public IEnumerable<Finding> Check(PartPlace place) =>
        groove > key
            ? []
            : [new("key-too-wide", Severity.Warning, Name, "The key does not enter.", "Widen the groove.")];

    private static Loft Block(PartPlace place, double from, double to) =>
        Loft.Prism(place.Rectangle(from, -3, to, 3), place.BaseZ, place.BaseZ + 6);
}
