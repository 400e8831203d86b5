using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.Plinth;

/// <summary>
/// The plinth about the origin, with its chamfer and pad, or with a wedge below when the object is tilted.
/// </summary>
internal sealed class PlinthShape(TestObjectSpec spec, double halfX, double halfY, PartPlace? pad)
{
    /// <summary>
    /// Radius and cut that the foot's corners keep under a large chamfer, mm: no sharp corner lifts off the plate.
    /// </summary>
    internal const double LeastCorner = 0.3;

    private readonly KeyedSquare shape = new(halfX, halfY, Proportions.PlinthRadius, Proportions.PlinthCut);

    /// <summary>Top of the plinth, mm, on the grid.</summary>
    internal static double Top(PlinthSpec spec) => Grid.Snap(spec.Thickness);

    /// <summary>The plinth with holes right through it.</summary>
    internal IEnumerable<Loft> Lofts(IReadOnlyList<Outline> cutOuts)
    {
        double top = Top(spec.Plinth);
        var whole = new Region(shape.At(default), cutOuts);
        if (spec.Tilt.Angle != 0)
            return [Wedge(whole), Loft.Prism(whole, 0, top)];
        return spec.Plinth.EdgeChamfer < Grid.ToMillimetres(1)
            ? [Loft.Prism(whole, 0, top)]
            : Chamfered(whole, cutOuts, top);
    }

    private Loft[] Chamfered(Region whole, IReadOnlyList<Outline> cutOuts, double top)
    {
        double chamfer = Grid.Snap(spec.Plinth.EdgeChamfer);
        KeyedSquare grown = shape.Grow(-chamfer);
        var foot = new KeyedSquare(
            grown.HalfX,
            grown.HalfY,
            Math.Max(LeastCorner, grown.Radius),
            Math.Max(LeastCorner, grown.Key)
        );
        return
        [
            new Loft(
                new Region(Padded(foot, chamfer, atFoot: true), cutOuts),
                0,
                new Region(Padded(shape, chamfer, atFoot: false), cutOuts),
                chamfer
            ),
            Loft.Prism(whole, chamfer, top),
        ];
    }

    /// <summary>
    /// The underside becomes level when the object is turned; the wedge is thinnest at one side of the plinth.
    /// </summary>
    private Loft Wedge(Region whole)
    {
        double slope = Math.Tan(spec.Tilt.Angle * Math.PI / 180);
        bool aboutX = spec.Tilt.Axis == TiltAxis.X;
        double z0 = -Proportions.WedgeLeast - Math.Abs(slope) * (aboutX ? halfY : halfX);
        return Loft.Wedge(whole, z0, aboutX ? 0 : slope, aboutX ? -slope : 0, 0);
    }

    /// <summary>
    /// The outline with the pad's ends as vertices; at the foot the pad reaches out to the full width.
    /// </summary>
    private Outline Padded(KeyedSquare section, double chamfer, bool atFoot)
    {
        List<GridPoint> points = [.. section.Points(default)];
        if (pad is not { } place)
            return new Outline(points);
        double half = Proportions.PadWidth / 2,
            inset = atFoot ? chamfer : 0;
        (double Along, double Outward)[] corners =
        [
            (half + chamfer, -inset),
            (half, 0),
            (-half, 0),
            (-half - chamfer, -inset),
        ];
        int index = (Side)place.Quarters switch
        {
            Side.Right => 2,
            Side.Back => KeyedSquare.EastVertices,
            Side.Left => KeyedSquare.EastVertices + KeyedSquare.CornerVertices,
            _ => points.Count,
        };
        points.InsertRange(
            index,
            corners.Select(c =>
            {
                Vector3D p = place.Point(c.Along, c.Outward, 0);
                return GridPoint.FromMillimetres(p.X, p.Y);
            })
        );
        return new Outline(points);
    }
}
