using CalibGeom.Meshes;
using CalibGeom.Solids;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Parts;

namespace CalibGeom.Tests.TestObjects;

/// <summary>A part as a developer would add it: a block with a groove for a key, and the key beside it.</summary>
internal sealed class OwnPart(double key, double groove) : ITestPart
{
    public string Name => "keyway";

    public string Label => "KEY";

    public PartFootprint Footprint => new([Rect.Centred(12, 6)], []);

    public IEnumerable<PartBody> Bodies(PartPlace place) =>
        [
            new("key", [Loft.Prism(place.Rectangle(-6, -3, -6 + key, 3), place.BaseZ, place.BaseZ + 6)]),
            new("block", Sides(place)),
        ];

    public IEnumerable<PartFeature> Features(PartPlace place)
    {
        Vector3D along = place.Direction(1, 0);
        double z = place.BaseZ + 3;
        var outside = PartFeature.Size(
            "x",
            "outside jaws over the key",
            GaugeLine.Outside("key.outside.x", place.Point(-6 + key / 2, 0, z), along, key, key)
        );
        var inside = PartFeature.Size(
            "x",
            "inside jaws in the groove",
            GaugeLine.Inside("keyway.inside.x", place.Point(3, 0, z), along, groove, 3 - groove / 2)
        );
        var mate = new Mate("x", outside.Feature.Id, inside.Feature.Id, (groove - key) / 2);
        var fit = new Feature("key.fit", (groove - key) / 2, "fit", "x", "put the key into the groove")
        {
            Mates = [mate],
        };
        return [outside, inside, new PartFeature(fit, [])];
    }

    public IEnumerable<Finding> Check(PartPlace place) =>
        groove > key
            ? []
            : [new("key-too-wide", Severity.Warning, Name, "The key does not enter.", "Widen the groove.")];

    private IEnumerable<Loft> Sides(PartPlace place) =>
        [
            Loft.Prism(place.Rectangle(0, -3, 3 - groove / 2, 3), place.BaseZ, place.BaseZ + 6),
            Loft.Prism(place.Rectangle(3 + groove / 2, -3, 6, 3), place.BaseZ, place.BaseZ + 6),
        ];
}
