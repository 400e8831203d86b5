namespace CalibGeom.TestObjects.Parts;

/// <summary>
/// A part seen from above, in its own frame. A part at the plinth's edge has the edge along y = 0 of its frame and the
/// plinth at y &lt; 0; the layout turns it to a side. Immutable.
/// </summary>
/// <param name="Solids">What it covers, mm; at least one rectangle.</param>
/// <param name="Lanes">What must stay free of others, mm.</param>
public sealed record PartFootprint(IReadOnlyList<Rect> Solids, IReadOnlyList<Lane> Lanes)
{
    /// <summary>The distance that other parts keep from it, mm. Default 1.5: resin drains between them.</summary>
    public double Gap { get; init; } = 1.5;

    /// <summary>How high it is. Default <see cref="PartHeight.Tall"/>.</summary>
    public PartHeight Height { get; init; } = PartHeight.Tall;

    /// <summary>
    /// Whether its faces lie whole pixels apart where the spec asks for that, so that it is placed a quarter of a pixel
    /// off their borders. Default false.
    /// </summary>
    public bool OnWholePixels { get; init; }

    /// <summary>Whether it may also stand turned by a quarter, counter-clockwise. Default false.</summary>
    public bool MayTurn { get; init; }

    /// <summary>Whether it stands at the plinth's edge. Default false: anywhere.</summary>
    public bool AtEdge { get; init; }

    /// <summary>The ways through it that light is to be seen through. Default none.</summary>
    public IReadOnlyList<Opening> Openings { get; init; } = [];

    /// <summary>The rectangle round all it covers.</summary>
    internal Rect Bounds => Solids.Aggregate((a, b) => a.Join(b));

    /// <summary>The footprint turned by quarters about the origin, then moved.</summary>
    internal PartFootprint At(double x, double y, int quarters = 0) =>
        this with
        {
            Solids = [.. Solids.Select(r => r.Turn(quarters).Move(x, y))],
            Lanes = [.. Lanes.Select(l => l with { Room = l.Room.Turn(quarters).Move(x, y) })],
            Openings = [.. Openings.Select(o => o.At(x, y, quarters))],
        };

    /// <summary>The footprint with the lanes of light beside its openings wider on both sides.</summary>
    internal PartFootprint WithSight(double wider) =>
        wider == 0 || Openings.Count == 0 ? this : this with { Lanes = [.. Lanes.Select(l => Wider(l, wider))] };

    private static Lane Wider(Lane lane, double by)
    {
        Rect r = lane.Room;
        bool alongX = r.Width > r.Depth;
        return lane.Kind != LaneKind.Open ? lane
            : alongX ? lane with { Room = r with { Y0 = r.Y0 - by, Y1 = r.Y1 + by } }
            : lane with { Room = r with { X0 = r.X0 - by, X1 = r.X1 + by } };
    }
}
