using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Layout;

/// <summary>
/// Where everything stands: parts, the plinth's size, the squeeze tab at its edge and the flat pad. The plinth's centre
/// is the origin.
/// </summary>
/// <param name="Parts">The parts in place, in the order given.</param>
/// <param name="HalfX">Half the plinth's width, mm.</param>
/// <param name="HalfY">Half the plinth's depth, mm.</param>
/// <param name="Tab">Where the squeeze tab is, if any.</param>
/// <param name="Pad">Where the pad is, if any.</param>
internal sealed record ObjectLayout(IReadOnlyList<Placement> Parts, double HalfX, double HalfY, Edge? Tab, Edge? Pad)
{
    /// <summary>The layout of some parts, with or without squeeze tab and pad.</summary>
    internal static ObjectLayout Of(
        IReadOnlyList<LayoutItem> items,
        bool tab,
        bool pad,
        double chamfer,
        PixelGrid pixels
    )
    {
        Placement[] placed = Packing.Of(items);
        Rect inner = Packing.BoundsOf(placed);
        double cornerRoom = CornerRoom(chamfer),
            side = Proportions.PadWidth + 2 * cornerRoom + 0.5;
        Rect least = Rect.Centred(side, side).Move((inner.X0 + inner.X1) / 2, (inner.Y0 + inner.Y1) / 2);
        var finder = new EdgeFinder(placed, inner.Grow(Proportions.PlinthMargin).Join(least), cornerRoom);
        Edge? tabPlace = tab ? finder.PlaceTab() : null;
        Edge? padPlace = pad ? finder.PlacePad() : null;
        return Centre(placed, finder.Plinth, tabPlace, padPlace, pixels);
    }

    /// <summary>How far from the end of a side its straight part begins, at the foot of the chamfer too.</summary>
    private static double CornerRoom(double chamfer) =>
        Math.Max(Proportions.PlinthRadius, Proportions.PlinthCut + (Math.Sqrt(2) - 1) * chamfer) + chamfer + 0.1;

    private static ObjectLayout Centre(Placement[] placed, Rect plinth, Edge? tab, Edge? pad, PixelGrid pixels)
    {
        double dx = -(plinth.X0 + plinth.X1) / 2,
            dy = -(plinth.Y0 + plinth.Y1) / 2;
        double halfX = Planar.Grid.Snap(plinth.Width / 2),
            halfY = Planar.Grid.Snap(plinth.Depth / 2);
        return new ObjectLayout(Array.ConvertAll(placed, Move), halfX, halfY, MoveEdge(tab), MoveEdge(pad));

        Placement Move(Placement p)
        {
            (double x, double y) = p.Item.HasWholePixels
                ? pixels.Place(p.X + dx, p.Y + dy)
                : pixels.Position(p.X + dx, p.Y + dy);
            return p.MoveTo(x, y);
        }

        Edge? MoveEdge(Edge? edge) =>
            edge is not { } e
                ? null
                : e.Side switch
                {
                    Side.Back => new Edge(e.Side, halfY, Planar.Grid.Snap(e.At + dx)),
                    Side.Front => new Edge(e.Side, -halfY, Planar.Grid.Snap(e.At + dx)),
                    Side.Right => new Edge(e.Side, halfX, Planar.Grid.Snap(e.At + dy)),
                    _ => new Edge(e.Side, -halfX, Planar.Grid.Snap(e.At + dy)),
                };
    }
}
