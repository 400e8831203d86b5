using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Tests.Words;

/// <summary>Readings of one standard object.</summary>
internal static class PredictStories
{
    private static readonly Reading[] Good = [.. StandardObject.Exact(0, 0.01, 0, 0.01).Readings];

    internal static IEnumerable<Story> All =>
        [
            Of("all faces", Good),
            Of("two faces", One("box1.outside.x"), One("box2.inside.x")),
            Of("boxes alone", [.. Good.Where(r => r.Id.Part == KnownFeatures.Box)]),
            Of("one axis", [.. Good.Where(r => r.Id.Axis == "x")]),
            Of("a slip of the pen", With("box1.outside.x", 80.2)),
            Of("a face that is off", With("box2.inside.x", 8.42)),
            Of("a zero twice", With("box1.outside.x", 8.002)),
            Of("a bad repeat", [.. Good.SelectMany(r => new[] { r, r, Size(r, r.Id == "box2.inside.y" ? 0.05 : 0) })]),
            Of(
                "a burr",
                [
                    .. Good.Select(r =>
                        Size(r, r.Id is { Part: KnownFeatures.Box, Size: KnownFeatures.Outside } ? 0.05 : 0)
                    ),
                ]
            ),
            Of("nothing lies on a line", [.. Good.Select((r, i) => Size(r, i % 2 == 0 ? 0.05 : -0.05))]),
            Of(
                "axes differ",
                [.. Good.Select(r => Size(r, r.Id.Axis == "x" && r.Id.Size != KnownFeatures.Inside ? 0.08 : 0))]
            ),
            Of("felt as read", [.. Good, Reading.Felt("joint1.fit", FeltFit.Slides)]),
            Of("felt against what was read", [.. Good, Reading.Felt("joint1.fit", FeltFit.Refuses)]),
            Of(
                "felt two ways",
                Reading.Felt("joint1.fit", FeltFit.Refuses),
                Reading.Felt("joint2.fit", FeltFit.Rattles)
            ),
            Of("felt alone", Reading.Felt("joint1.fit", FeltFit.Slides)),
            Of(
                "slots counted",
                [.. Good, Reading.Count(KnownFeatures.SlotsOpen, 6), Reading.Count(KnownFeatures.SqueezeOpen, 3)]
            ),
            Of(
                "a tab more open than the comb",
                [.. Good, Reading.Count(KnownFeatures.SlotsOpen, 4), Reading.Count(KnownFeatures.SqueezeOpen, 5)]
            ),
            Of("more open than there are", [.. Good, Reading.Count(KnownFeatures.SlotsOpen, 9)]),
            Of("a thick first layer", [.. Good, Reading.Size("plinth.thickness", 2.7)]),
            Of(
                "a squeezed first layer",
                [.. Good, Reading.Size("plinth.thickness", 2.2), Reading.Count(KnownFeatures.SqueezeOpen, 2)]
            ),
            Told("washed", new ReadingSet(Good, state: PartState.Washed, material: Material.Rigid)),
            Told("dry", new ReadingSet(Good, state: PartState.Dry, material: Material.Rigid)),
            Told("nothing said of state and material", new ReadingSet(Good)),
            Told("warm", new ReadingSet(Good, temperature: 30, state: PartState.PostCured, material: Material.Rigid)),
            Told(
                "another object's digest",
                new ReadingSet(Good, digest: "fedcba9876543210", state: PartState.PostCured, material: Material.Rigid)
            ),
            Told(
                "a caliper that is known",
                new ReadingSet(
                    Good.Select(r => Reading.Size(r.Feature, r.Value, "cal")),
                    [Instrument.WithPermissibleError("cal", 0.02, 0.01)],
                    state: PartState.PostCured,
                    material: Material.Rigid
                )
            ),
        ];

    private static Reading One(string id) => Good.Single(r => r.Feature == id);

    private static Reading Size(Reading r, double more) => Reading.Size(r.Feature, r.Value + more);

    private static Reading[] With(string id, double value) =>
        [.. Good.Select(r => r.Feature == id ? Reading.Size(id, value) : r)];

    private static Story Of(string name, params Reading[] readings) =>
        Told(name, new ReadingSet(readings, state: PartState.PostCured, material: Material.Rigid));

    private static Story Told(string name, ReadingSet readings)
    {
        try
        {
            return new(name, ClearancePrediction.Of(StandardObject.Table, readings).Findings);
        }
        catch (InputException e)
        {
            return new(name, [new Finding("refused", Severity.Error, e.Id, e.Message, "")]);
        }
    }
}
