using CalibGeom.TestObjects.Parts;
using CalibGeom.TestObjects.Parts.Plinth;

namespace CalibGeom.TestObjects.Layout;

/// <summary> Where everything stands, and the plinth's size. The plinth's centre is the origin. </summary>
/// <param name="Parts">The parts in place, in the order given.</param>
/// <param name="HalfX">Half the plinth's width, mm.</param>
/// <param name="HalfY">Half the plinth's depth, mm.</param>
internal sealed record ObjectLayout(IReadOnlyList<Placement> Parts, double HalfX, double HalfY)
{
    /// <summary>What the corners leave of a side beside the pad's width, mm, so that the pad can be shifted.</summary>
    private const double Play = 0.5;

    /// <summary>What a place at the edge keeps from where the side's straight part ends, mm.</summary>
    private const double OffCorner = 0.1;

    /// <summary>The layout of some parts.</summary>
    /// <param name="parts">The parts.</param>
    /// <param name="plinth">The plinth.</param>
    /// <param name="plinthTop">Its top above the plate, mm.</param>
    /// <param name="pixels">What positions move onto.</param>
    /// <param name="seen">Whether light that passes openings counts for more than a small plinth.</param>
    internal static ObjectLayout Of(
        IReadOnlyList<ITestPart> parts,
        PlinthSpec plinth,
        double plinthTop,
        PixelGrid pixels,
        bool seen = false
    )
    {
        double chamfer = plinth.EdgeChamfer;
        ITestPart[] within = [.. parts.Where(p => !p.Footprint.AtEdge)];
        Placement[] inside = seen ? Packing.Seen(within, plinthTop) : Packing.Of(within);
        Rect inner = Packing.BoundsOf(inside);
        double cornerRoom = CornerRoom(chamfer),
            side = Proportions.PadWidth + 2 * cornerRoom + Play;
        Rect least = Rect.Centred(side, side).Move((inner.X0 + inner.X1) / 2, (inner.Y0 + inner.Y1) / 2);
        var finder = new EdgeFinder(inside, inner.Grow(Proportions.PlinthMargin).Join(least), cornerRoom);
        // What stands beside the plinth first: a flat pad finds a place more easily.
        Placement[] edge =
        [
            .. parts.Where(p => p.Footprint.AtEdge).OrderBy(p => p.Footprint.Height).Select(finder.Place),
        ];
        Placement[] all = [.. inside, .. edge];
        return Centre([.. parts.Select(p => Array.Find(all, a => IsOf(a, p))!)], finder.Plinth, pixels);
    }

    private static bool IsOf(Placement place, ITestPart part) =>
        place.Part == part || part.OtherWays.Contains(place.Part);

    /// <summary>How far from the end of a side its straight part begins, at the foot of the chamfer too.</summary>
    private static double CornerRoom(double chamfer) =>
        Math.Max(
            Math.Max(Proportions.PlinthRadius, Proportions.PlinthCut + (Math.Sqrt(2) - 1) * chamfer),
            PlinthShape.LeastCorner + chamfer
        )
        + chamfer
        + OffCorner;

    private static ObjectLayout Centre(Placement[] placed, Rect plinth, PixelGrid pixels)
    {
        double dx = -(plinth.X0 + plinth.X1) / 2,
            dy = -(plinth.Y0 + plinth.Y1) / 2;
        double halfX = Planar.Grid.Snap(plinth.Width / 2),
            halfY = Planar.Grid.Snap(plinth.Depth / 2);
        return new ObjectLayout(Array.ConvertAll(placed, p => p.Placed.AtEdge ? MoveEdge(p) : Move(p)), halfX, halfY);

        Placement Move(Placement p)
        {
            (double x, double y) = p.Placed.OnWholePixels
                ? pixels.Place(p.X + dx, p.Y + dy)
                : pixels.Position(p.X + dx, p.Y + dy);
            return p.MoveTo(x, y);
        }

        Placement MoveEdge(Placement p)
        {
            double x = Planar.Grid.Snap(p.X + dx),
                y = Planar.Grid.Snap(p.Y + dy);
            return (Side)p.Quarters switch
            {
                Side.Back => p.MoveTo(x, halfY),
                Side.Front => p.MoveTo(x, -halfY),
                Side.Right => p.MoveTo(halfX, y),
                _ => p.MoveTo(-halfX, y),
            };
        }
    }
}
