using CalibGeom.Slicing;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// How far undersides stick out that rise flatter than <see cref="OverhangLimits.Good"/>, added up over layers. A pixel
/// begins anew at its carrier wherever that is flatter than going on from where its carrier began.
/// </summary>
internal sealed class FlatReach
{
    private static readonly double LevelPerRise = 1 / Math.Tan(OverhangLimits.Good * Math.PI / 180);

    // A line closes a ceiling that it goes on from within 45 degrees of the way that the ceiling has come.
    private const double Straight = 0.7;

    private readonly PixelGrid grid;
    private readonly double layerHeight;
    private readonly FlatLayer[] recent;
    private readonly Stack<(int X, int Y)> open = new();
    private FlatLayer current;
    private int layer;

    internal FlatReach(PixelGrid grid, double layerHeight)
    {
        (this.grid, this.layerHeight) = (grid, layerHeight);
        // A flat underside moves by a pixel at least once in so many layers.
        int memory = 1 + (int)Math.Ceiling(Math.Max(grid.PitchX, grid.PitchY) / (layerHeight * LevelPerRise));
        recent = [.. Enumerable.Range(0, memory).Select(_ => new FlatLayer(grid.Height))];
        current = new FlatLayer(grid.Height);
    }

    /// <summary>A step of one layer that reaches no further than this (mm) is no flat one.</summary>
    internal double LeastStep => layerHeight * LevelPerRise;

    /// <summary>Whether a lower layer left something that may go on.</summary>
    internal bool IsEmpty => Array.TrueForAll(recent, r => r.Count == 0);

    /// <summary>Whether a lower layer left something in or beside a run of pixels that may go on.</summary>
    internal bool Touches(int row, PixelRun run)
    {
        foreach (FlatLayer older in recent)
            for (int y = row - 1; y <= row + 1; y++)
                if (older.Any(y, run.Start - 1, run.End + 1))
                    return true;
        return false;
    }

    /// <summary>Goes on to a layer; everything is for it until the next call.</summary>
    internal void Begin(int next)
    {
        FlatLayer oldest = recent[^1];
        Array.Copy(recent, 0, recent, 1, recent.Length - 1);
        recent[0] = current;
        current = oldest;
        current.Clear();
        layer = next;
    }

    /// <summary>
    /// How far the flat underside has come, mm, that ended in a pixel and that a line to another place goes on from; 0
    /// when there is none, or when the line leads aside.
    /// </summary>
    internal double ReachTowards((int X, int Y) end, (int X, int Y) other)
    {
        double reach = 0,
            wayX = (other.X - end.X) * grid.PitchX,
            wayY = (other.Y - end.Y) * grid.PitchY;
        foreach (FlatLayer older in recent)
            if (older.Find(end) is { } origin)
            {
                double comeX = (end.X - origin.X) * grid.PitchX,
                    comeY = (end.Y - origin.Y) * grid.PitchY,
                    come = double.Hypot(comeX, comeY);
                if (comeX * wayX + comeY * wayY >= Straight * come * double.Hypot(wayX, wayY))
                    reach = Math.Max(reach, come);
            }
        return reach;
    }

    /// <summary>
    /// Lets the flat underside that ended in a pixel rest there, with what belongs to it within a distance (mm): what
    /// goes on from it begins anew.
    /// </summary>
    internal void Rest((int X, int Y) carrier, double within)
    {
        open.Push(carrier);
        while (open.TryPop(out (int X, int Y) pixel))
        {
            // Another one may have rested here before, but less far.
            bool known = pixel == carrier;
            foreach (FlatLayer older in recent)
                known |= older.Remove(pixel);
            if (!known)
                continue;
            for (int dx = -1; dx <= 1; dx++)
            for (int dy = -1; dy <= 1; dy++)
                if ((dx, dy) != (0, 0) && Level((pixel.X + dx, pixel.Y + dy), (carrier.X, carrier.Y, 0)) <= within)
                    open.Push((pixel.X + dx, pixel.Y + dy));
        }
    }

    /// <summary>
    /// Where the underside in a pixel began when it goes on from a carrier, and how far it sticks out more than one of
    /// the least good angle would, mm; flat when that is above 0.
    /// </summary>
    internal ((int X, int Y, int Layer) Origin, double Excess) From((int X, int Y) pixel, (int X, int Y) carrier)
    {
        (int X, int Y, int Layer) origin = (carrier.X, carrier.Y, layer - 1);
        double best = Excess(pixel, origin);
        foreach (FlatLayer older in recent)
            if (older.Find(carrier) is { } known && Excess(pixel, known) is var excess && excess > best)
                (best, origin) = (excess, known);
        return (origin, best);
    }

    /// <summary>Notes where the flat underside in a pixel began, pixel by pixel along the rows.</summary>
    internal void Add((int X, int Y) pixel, (int X, int Y, int Layer) origin) => current.Append(pixel, origin);

    /// <summary>How far a pixel sticks out beyond where its underside began, and how much that rose, mm.</summary>
    internal (double Reach, double Rise) Way((int X, int Y) pixel, (int X, int Y, int Layer) origin) =>
        (Level(pixel, origin), Rise(origin));

    private double Excess((int X, int Y) pixel, (int X, int Y, int Layer) origin) =>
        Level(pixel, origin) - Rise(origin) * LevelPerRise;

    private double Rise((int X, int Y, int Layer) origin) => (layer - origin.Layer) * layerHeight;

    private double Level((int X, int Y) pixel, (int X, int Y, int Layer) origin)
    {
        double dx = (pixel.X - origin.X) * grid.PitchX,
            dy = (pixel.Y - origin.Y) * grid.PitchY;
        return Math.Sqrt(dx * dx + dy * dy);
    }
}
