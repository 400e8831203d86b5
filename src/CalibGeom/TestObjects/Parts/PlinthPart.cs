using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts;

/// <summary>
/// The plinth about the origin, with its chamfer and pad, or with a wedge below when the object is tilted.
/// </summary>
internal sealed class PlinthPart(PlinthSpec spec, TiltSpec tilt, double halfX, double halfY, Edge? pad)
{
    private const double LeastCorner = 0.3;
    private readonly KeyedSquare shape = new(halfX, halfY, Proportions.PlinthRadius, Proportions.PlinthCut);

    /// <summary>Top of the plinth, mm, on the grid.</summary>
    internal static double Top(PlinthSpec spec) => Grid.Snap(spec.Thickness);

    internal IEnumerable<Loft> Lofts()
    {
        double top = Top(spec);
        if (tilt.Angle != 0)
            return [Wedge(), Loft.Prism(shape.At(default), 0, top)];
        return spec.EdgeChamfer < Grid.ToMillimetres(1) ? [Loft.Prism(shape.At(default), 0, top)] : Chamfered(top);
    }

    private Loft[] Chamfered(double top)
    {
        double chamfer = Grid.Snap(spec.EdgeChamfer);
        KeyedSquare grown = shape.Grow(-chamfer);
        var foot = new KeyedSquare(
            grown.HalfX,
            grown.HalfY,
            Math.Max(LeastCorner, grown.Radius),
            Math.Max(LeastCorner, grown.Key)
        );
        return
        [
            new Loft(Padded(foot, chamfer, atFoot: true), 0, Padded(shape, chamfer, atFoot: false), chamfer),
            Loft.Prism(shape.At(default), chamfer, top),
        ];
    }

    /// <summary>
    /// The underside becomes level when the object is turned; the wedge is thinnest at one side of the plinth.
    /// </summary>
    private Loft Wedge()
    {
        double slope = Math.Tan(tilt.Angle * Math.PI / 180);
        bool aboutX = tilt.Axis == TiltAxis.X;
        double z0 = -Proportions.WedgeLeast - Math.Abs(slope) * (aboutX ? halfY : halfX);
        return Loft.Wedge(shape.At(default), z0, aboutX ? 0 : slope, aboutX ? -slope : 0, 0);
    }

    /// <summary>
    /// The outline with the pad's ends as vertices; at the foot the pad reaches out to the full width.
    /// </summary>
    private Outline Padded(KeyedSquare section, double chamfer, bool atFoot)
    {
        List<GridPoint> points = [.. section.Points(default)];
        if (pad is not { } edge)
            return new Outline(points);
        double half = Proportions.PadWidth / 2,
            inset = atFoot ? chamfer : 0;
        (double Along, double Outward)[] corners =
        [
            (-half - chamfer, -inset),
            (-half, 0),
            (half, 0),
            (half + chamfer, -inset),
        ];
        bool backward = edge.Side is Side.Back or Side.Left;
        IEnumerable<GridPoint> inserted = (backward ? corners.Reverse() : corners).Select(c =>
            At(edge, c.Along, c.Outward)
        );
        int index = edge.Side switch
        {
            Side.Right => 2,
            Side.Back => KeyedSquare.EastVertices,
            Side.Left => KeyedSquare.EastVertices + KeyedSquare.CornerVertices,
            _ => points.Count,
        };
        points.InsertRange(index, inserted);
        return new Outline(points);
    }

    private static GridPoint At(Edge edge, double along, double outward) =>
        edge.Side switch
        {
            Side.Back => GridPoint.FromMillimetres(edge.At + along, edge.Line + outward),
            Side.Front => GridPoint.FromMillimetres(edge.At + along, edge.Line - outward),
            Side.Right => GridPoint.FromMillimetres(edge.Line + outward, edge.At + along),
            _ => GridPoint.FromMillimetres(edge.Line - outward, edge.At + along),
        };
}
