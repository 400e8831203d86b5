using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Solids;

namespace CalibGeom.TestObjects.Parts.PinRow;

/// <summary>
/// Pins in front, the block with the holes behind, in the part's frame: its middle at the origin. Each hole stands on a
/// floor above the plinth and opens to the back through a vent, so that no first layer closes it, resin drains and no
/// suction cup faces the film.
/// </summary>
internal sealed class PinShape
{
    /// <summary>Wall round the widest hole, and least distance between pins, mm.</summary>
    internal const double Wall = 1.2;

    /// <summary>Between pins and block, mm: room for a jaw.</summary>
    private const double Aisle = 3.0;

    /// <summary>Floor below the holes, mm: thicker than any print-through.</summary>
    private const double Floor = 0.8;

    /// <summary>Height of the vents, mm: resin drains, and a bridge over it prints.</summary>
    private const double VentHeight = 1.2;

    private readonly double[] diameters;
    private readonly double height;
    private readonly double blockDepth;

    internal PinShape(PinSpec spec)
    {
        diameters = [.. spec.Diameters];
        height = spec.Height;
        blockDepth = diameters.Max() + 2 * Wall;
        Width = diameters.Sum() + (diameters.Length + 1) * Wall;
        Depth = diameters.Max() + Aisle + blockDepth;
    }

    internal double Width { get; }

    internal double Depth { get; }

    /// <summary>The pins' middle line.</summary>
    internal double PinRow => (diameters.Max() - Depth) / 2;

    /// <summary>The holes' middle line.</summary>
    internal double HoleRow => (Depth - blockDepth) / 2;

    /// <summary>
    /// Where diameters are taken, mm above the plinth: in the middle of what is straight in pin and hole.
    /// </summary>
    internal double GaugeHeight => (Floor + VentHeight + height) / 2;

    /// <summary>Width of a hole's vent, mm: part of the hole, so that the wall beside it stays.</summary>
    internal static double VentWidth(double diameter) => Math.Min(1.5, 0.6 * diameter);

    /// <summary>The middle of a pin and of its hole along the row.</summary>
    internal double Middle(int index) =>
        -Width / 2 + (index + 1) * Wall + diameters[..index].Sum() + diameters[index] / 2;

    internal Loft Pin(int index, PartPlace place) =>
        Loft.Prism(Circle(index, PinRow, place), place.BaseZ, Grid.Snap(place.BaseZ + height));

    /// <summary>Floor, the halves of the block beside each vent, and the block above.</summary>
    internal IEnumerable<Loft> Block(PartPlace place)
    {
        double floor = Grid.Snap(place.BaseZ + Floor),
            vent = Grid.Snap(floor + VentHeight),
            top = Grid.Snap(place.BaseZ + height),
            back = HoleRow + blockDepth / 2,
            front = HoleRow - blockDepth / 2;
        yield return Loft.Prism(place.Rectangle(-Width / 2, front, Width / 2, back), place.BaseZ, floor);
        yield return Loft.Prism(WithVents(place, front, back), floor, vent);
        yield return Loft.Prism(
            new Region(
                place.Rectangle(-Width / 2, front, Width / 2, back),
                diameters.Select((_, i) => Circle(i, HoleRow, place))
            ),
            vent,
            top
        );
    }

    /// <summary>The block's section with each hole open to the back by a slit.</summary>
    private Outline WithVents(PartPlace place, double front, double back)
    {
        var points = new List<GridPoint>
        {
            At(place, -Width / 2, back),
            At(place, -Width / 2, front),
            At(place, Width / 2, front),
            At(place, Width / 2, back),
        };
        for (int i = diameters.Length - 1; i >= 0; i--)
        {
            double half = VentWidth(diameters[i]) / 2;
            GridPoint centre = At(place, Middle(i), HoleRow);
            points.Add(At(place, Middle(i) + half, back));
            // Inside the block the ring is passed clockwise, from the slit's right side to its left.
            points.AddRange(
                Circle(i, HoleRow, place)
                    .Points.ToArray()
                    .Where(p => !InSlit(place, p, centre, half))
                    .OrderBy(p => ClockwiseFromBack(place, p, centre))
            );
            points.Add(At(place, Middle(i) - half, back));
        }
        return new Outline(points);
    }

    private static double ClockwiseFromBack(PartPlace place, GridPoint p, GridPoint centre)
    {
        (double x, double y) = Local(place, p, centre);
        double angle = Math.Atan2(x, y);
        return angle < 0 ? angle + 2 * Math.PI : angle;
    }

    private static bool InSlit(PartPlace place, GridPoint p, GridPoint centre, double half) =>
        Local(place, p, centre) is var l && l.Y > 0 && Math.Abs(l.X) < half;

    /// <summary>From a centre, in the part's frame, mm.</summary>
    private static (double X, double Y) Local(PartPlace place, GridPoint p, GridPoint centre)
    {
        double dx = p.XMillimetres - centre.XMillimetres,
            dy = p.YMillimetres - centre.YMillimetres;
        Vector3D right = place.Direction(1, 0),
            back = place.Direction(0, 1);
        return (dx * right.X + dy * right.Y, dx * back.X + dy * back.Y);
    }

    private Outline Circle(int index, double y, PartPlace place)
    {
        Vector3D c = place.Point(Middle(index), y, 0);
        return Outline.Circle(c.X, c.Y, diameters[index]);
    }

    private static GridPoint At(PartPlace place, double x, double y)
    {
        Vector3D p = place.Point(x, y, 0);
        return GridPoint.FromMillimetres(p.X, p.Y);
    }
}
