using CalibGeom.Planar;
using CalibGeom.Solids;

namespace CalibGeom.TestObjects.Parts.Labels;

/// <summary>The raised arrow that points along +X.</summary>
internal sealed class ArrowPart(double height) : ITestPart
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

    public IEnumerable<PartBody> Bodies(PartPlace place) =>
        [
            new PartBody(
                Name,
                [Loft.Prism(DirectionArrow.At(place.X, place.Y), place.BaseZ, Grid.Snap(place.BaseZ + height))]
            ),
            new PartBody(
                "mark",
                MarkDots.Along(place, 0, -HalfArrow - DotRoom + MarkDots.Diameter / 2, place.BaseZ, DotRoom)
            ),
        ];
}
