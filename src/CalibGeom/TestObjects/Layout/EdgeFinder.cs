using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Layout;

/// <summary>
/// Finds free places along the plinth's sides, and makes the plinth a little larger when there are none.
/// </summary>
internal sealed class EdgeFinder(Placement[] placed, Rect plinth, double cornerRoom)
{
    private const double Step = 0.25;
    private const double TabRoom = 1.0;
    private const double PadRoom = 0.3;

    private static readonly Side[] Sides = [Side.Left, Side.Back, Side.Front, Side.Right];

    private Rect? tabRoom;
    private Side? tabSide;

    /// <summary>The plinth, as large as it has become.</summary>
    internal Rect Plinth { get; private set; } = plinth;

    /// <summary>A place for the squeeze tab: post, bar and tab clear of all parts and lanes.</summary>
    internal Edge PlaceTab()
    {
        var tab = new LayoutItem("squeeze", TabRoom, []);
        Edge found = Place(
            SqueezeTab.Width,
            edge =>
            {
                var room = new Footprint([TabRectangle(edge)], []);
                return Array.TrueForAll(placed, p => p.Allows(tab, room, 0, 0));
            }
        );
        (tabRoom, tabSide) = (TabRectangle(found), found.Side);
        return found;
    }

    /// <summary>A place for the pad: free of parts above it and of the squeeze tab beside it.</summary>
    internal Edge PlacePad() =>
        Place(
            Proportions.PadWidth,
            edge =>
            {
                Rect above = PadRectangle(edge, -Proportions.PadDepth, 0).Grow(PadRoom),
                    beside = PadRectangle(edge, 0, 2 * Proportions.PadDepth);
                return Array.TrueForAll(placed, p => Array.TrueForAll(p.Placed.Solids, s => !s.Meets(above)))
                    && (tabRoom is not { } tab || !(tab.Meets(above) || tab.Meets(beside)));
            }
        );

    private static Rect TabRectangle(Edge edge) =>
        edge.Rectangle(-SqueezeTab.Width / 2, SqueezeTab.Width / 2, -SqueezeTab.PostReach, SqueezeTab.Reach);

    private static Rect PadRectangle(Edge edge, double from, double to) =>
        edge.Rectangle(-Proportions.PadWidth / 2, Proportions.PadWidth / 2, from, to);

    /// <summary>The first free place at the smallest enlargement of one side.</summary>
    private Edge Place(double width, Func<Edge, bool> free)
    {
        for (double more = 0; ; more += Step)
            foreach (Side side in Sides)
            {
                if (more > 0 && side == tabSide)
                    continue;
                Rect larger = Enlarged(side, more);
                foreach (Edge edge in Along(larger, side, width))
                {
                    if (!free(edge))
                        continue;
                    Plinth = larger;
                    return edge;
                }
            }
    }

    private Rect Enlarged(Side side, double by) =>
        side switch
        {
            Side.Back => Plinth with { Y1 = Plinth.Y1 + by },
            Side.Front => Plinth with { Y0 = Plinth.Y0 - by },
            Side.Right => Plinth with { X1 = Plinth.X1 + by },
            _ => Plinth with { X0 = Plinth.X0 - by },
        };

    private IEnumerable<Edge> Along(Rect rect, Side side, double width)
    {
        bool level = side is Side.Back or Side.Front;
        (double from, double to) = level ? (rect.X0, rect.X1) : (rect.Y0, rect.Y1);
        double line = side switch
        {
            Side.Back => rect.Y1,
            Side.Front => rect.Y0,
            Side.Right => rect.X1,
            _ => rect.X0,
        };
        for (double at = from + cornerRoom + width / 2; at <= to - cornerRoom - width / 2; at += Step)
            yield return new Edge(side, line, at);
    }
}
