using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Layout;

/// <summary>
/// Finds free places along the plinth's sides, and makes the plinth a little larger when there are none.
/// </summary>
internal sealed class EdgeFinder(IEnumerable<Placement> free, Rect plinth, double cornerRoom)
{
    /// <summary>How closely places along a side are tried and the plinth is enlarged, mm.</summary>
    private const double Step = 0.25;

    /// <summary>
    /// How far from a corner something that stands beside the plinth may be, mm: further in, light along the edge would
    /// meet the plinth's side both ways.
    /// </summary>
    private const double NearCorner = 2;

    private static readonly Side[] Sides = [Side.Left, Side.Back, Side.Front, Side.Right];

    private readonly List<Placement> placed = [.. free];
    private readonly HashSet<Side> taken = [];

    /// <summary>The plinth, as large as it has become.</summary>
    internal Rect Plinth { get; private set; } = plinth;

    /// <summary>
    /// The first free place at the smallest enlargement of one side; a side that has something beside it stays where it
    /// is.
    /// </summary>
    internal Placement Place(ITestPart part)
    {
        double width = part.Footprint.Bounds.Width;
        var room = Sides.ToDictionary(s => s, s => new FreeRoom(placed, part.Footprint.At(0, 0, (int)s)));
        for (double more = 0; ; more += Step)
            foreach (Side side in Sides)
            {
                if (more > 0 && taken.Contains(side))
                    continue;
                Rect larger = Enlarged(side, more);
                foreach (Placement place in Along(part, larger, side, width))
                {
                    if (!room[side].IsFree(place.X, place.Y))
                        continue;
                    Plinth = larger;
                    taken.Add(side);
                    placed.Add(place);
                    return place;
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

    /// <summary>From the corners inward: beside a corner light passes on the plinth's short side.</summary>
    private IEnumerable<Placement> Along(ITestPart part, Rect rect, Side side, double width)
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
        double first = from + cornerRoom + width / 2,
            last = to - cornerRoom - width / 2;
        double most = part.Footprint.Height == PartHeight.Tall ? NearCorner : double.PositiveInfinity;
        for (double more = 0; first + more <= last - more && more <= most; more += Step)
        {
            yield return At(first + more);
            yield return At(last - more);
        }

        Placement At(double at) =>
            level ? new Placement(part, at, line, (int)side) : new Placement(part, line, at, (int)side);
    }
}
