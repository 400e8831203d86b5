using CalibGeom.Planar;
using CalibGeom.Solids;

namespace CalibGeom.TestObjects.Parts.Labels;

/// <summary>The raised arrow that points along +X. It also answers for what all labels have in common.</summary>
/// <param name="labels">The labels of the object, or null where it has none.</param>
internal sealed class ArrowPart(LabelsSpec? labels) : ITestPart
{
    public string Name => "arrow";

    /// <summary>
    /// The arrow, and below it room for the dots of a mark, whether there are any or not: a mark moves nothing.
    /// </summary>
    public PartFootprint Footprint =>
        new([new Rect(-HalfWidth, -HalfArrow - DotRoom, HalfWidth, HalfArrow)], [])
        {
            Gap = TextPart.Room,
            Height = PartHeight.Low,
        };

    private const double HalfArrow = Proportions.ArrowWidth / 2,
        DotRoom = 2 * MarkDots.Diameter,
        HalfWidth = ((MarkDots.Most - 1) * MarkDots.Pitch + MarkDots.Diameter) / 2;

    public IEnumerable<Finding> Check(PartPlace place) =>
        labels is null ? [] : LabelRules.Check(labels, place.Spec.Process);

    public IEnumerable<PartBody> Bodies(PartPlace place) =>
        [
            new PartBody(
                Name,
                [
                    Loft.Prism(
                        DirectionArrow.At(place.X, place.Y),
                        place.BaseZ,
                        Grid.Snap(place.BaseZ + (labels ?? new LabelsSpec()).Height)
                    ),
                ]
            ),
            new PartBody(
                "mark",
                MarkDots.Along(place, 0, -HalfArrow - DotRoom + MarkDots.Diameter / 2, place.BaseZ, DotRoom)
            ),
        ];
}
