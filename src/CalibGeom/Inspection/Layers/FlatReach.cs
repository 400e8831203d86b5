using CalibGeom.Slicing;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// How far undersides stick out that rise flatter than <see cref="OverhangLimits.Good"/>, added up over layers. A pixel
/// begins anew at its carrier wherever that is flatter than going on from where its carrier began.
/// </summary>
internal sealed class FlatReach
{
    private static readonly double LevelPerRise = 1 / Math.Tan(OverhangLimits.Good * Math.PI / 180);
    private readonly PixelGrid grid;
    private readonly double layerHeight;
    private readonly int memory;
    private readonly Queue<Dictionary<(int X, int Y), (int X, int Y, int Layer)>> recent = new();
    private Dictionary<(int X, int Y), (int X, int Y, int Layer)> current = [];
    private int layer;

    internal FlatReach(PixelGrid grid, double layerHeight)
    {
        (this.grid, this.layerHeight) = (grid, layerHeight);
        // A flat underside moves by a pixel at least once in so many layers.
        memory = 1 + (int)Math.Ceiling(Math.Max(grid.PitchX, grid.PitchY) / (layerHeight * LevelPerRise));
    }

    /// <summary>A step of one layer that reaches no further than this (mm) is no flat one.</summary>
    internal double LeastStep => layerHeight * LevelPerRise;

    /// <summary>Whether a lower layer left something that may go on.</summary>
    internal bool IsEmpty => recent.All(r => r.Count == 0);

    /// <summary>Goes on to a layer; everything is for it until the next call.</summary>
    internal void Begin(int next)
    {
        recent.Enqueue(current);
        while (recent.Count > memory)
            recent.Dequeue();
        current = [];
        layer = next;
    }

    /// <summary>Whether a flat underside ended in a pixel of a lower layer.</summary>
    internal bool Continues((int X, int Y) carrier) => recent.Any(r => r.ContainsKey(carrier));

    /// <summary>How far a flat underside sticks out that ended in a pixel, mm; 0 when none did.</summary>
    internal double ReachOf((int X, int Y) carrier)
    {
        double reach = 0;
        foreach (var older in recent)
            if (older.TryGetValue(carrier, out var origin))
                reach = Math.Max(reach, Level(carrier, origin));
        return reach;
    }

    /// <summary>
    /// Lets the flat underside that ended in a pixel rest there, with what belongs to it within a distance (mm): what
    /// goes on from it begins anew.
    /// </summary>
    internal void Rest((int X, int Y) carrier, double within)
    {
        var open = new Stack<(int X, int Y)>([carrier]);
        while (open.TryPop(out (int X, int Y) pixel))
        {
            // Another one may have rested here before, but less far.
            bool known = pixel == carrier;
            foreach (var older in recent)
                known |= older.Remove(pixel);
            if (!known)
                continue;
            for (int dx = -1; dx <= 1; dx++)
            for (int dy = -1; dy <= 1; dy++)
                if ((dx, dy) != (0, 0) && Level((pixel.X + dx, pixel.Y + dy), (carrier.X, carrier.Y, 0)) <= within)
                    open.Push((pixel.X + dx, pixel.Y + dy));
        }
    }

    /// <summary>Notes a pixel and returns how far it sticks out, mm, and how much the underside rose on the
    /// way.</summary>
    internal (double Reach, double Rise) Add((int X, int Y) pixel, (int X, int Y) carrier)
    {
        (int X, int Y, int Layer) origin = (carrier.X, carrier.Y, layer - 1);
        double best = Excess(pixel, origin);
        foreach (var older in recent)
            if (older.TryGetValue(carrier, out var known) && Excess(pixel, known) is var excess && excess > best)
                (best, origin) = (excess, known);
        if (best > 0)
            current[pixel] = origin;
        return (Level(pixel, origin), Rise(origin));
    }

    private double Excess((int X, int Y) pixel, (int X, int Y, int Layer) origin) =>
        Level(pixel, origin) - Rise(origin) * LevelPerRise;

    private double Rise((int X, int Y, int Layer) origin) => (layer - origin.Layer) * layerHeight;

    private double Level((int X, int Y) pixel, (int X, int Y, int Layer) origin) =>
        double.Hypot((pixel.X - origin.X) * grid.PitchX, (pixel.Y - origin.Y) * grid.PitchY);
}
