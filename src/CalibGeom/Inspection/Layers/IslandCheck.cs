using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Slicing;

namespace CalibGeom.Inspection.Layers;

/// <summary>Finds pieces of a layer with nothing below them.</summary>
internal sealed class IslandCheck
{
    /// <summary>
    /// A pixel or two away from material below, so few pixels are a corner of that material that rounding cut off: a
    /// corner of 10 degrees falls apart over three pixels, one of 5 degrees over six.
    /// </summary>
    private const int RoundingReach = 2,
        MostRounded = 8;

    private readonly List<LayerDefect> found = [];

    internal IEnumerable<LayerDefect> Defects => found;

    internal void Check(int layer, double z, LayerMask current, LayerMask below)
    {
        var pieces = new RunLabels(current, diagonal: true);
        var carried = new bool[pieces.Count];
        RunPairs.Visit(current, below, (run, _) => carried[pieces[run]] = true);
        if (Array.TrueForAll(carried, c => c))
            return;
        var area = new long[pieces.Count];
        var near = new bool[pieces.Count];
        var place = new (int X, int Y)[pieces.Count];
        for (int y = 0; y < current.Grid.Height; y++)
        {
            int number = current.FirstRun(y);
            foreach (PixelRun run in current.Row(y))
            {
                int piece = pieces[number++];
                if (carried[piece])
                    continue;
                near[piece] |= area[piece] < MostRounded && TouchesNearby(below, run, y);
                if (area[piece] == 0)
                    place[piece] = ((run.Start + run.End - 1) / 2, y);
                area[piece] += run.Length;
            }
        }
        for (int i = 0; i < pieces.Count; i++)
        {
            if (carried[i] || (near[i] && area[i] <= MostRounded))
                continue;
            Vector2D middle = current.Grid.Middle(place[i].X, place[i].Y);
            found.Add(
                new LayerDefect(
                    LayerDefectKind.Island,
                    new Vector3D(middle.X, middle.Y, z),
                    layer,
                    layer,
                    area[i] * current.Grid.PixelArea
                )
            );
        }
    }

    private static bool TouchesNearby(LayerMask below, PixelRun run, int y)
    {
        for (int row = Math.Max(0, y - RoundingReach); row <= Math.Min(below.Grid.Height - 1, y + RoundingReach); row++)
            foreach (PixelRun other in below.Row(row))
                if (other.Start < run.End + RoundingReach && run.Start < other.End + RoundingReach)
                    return true;
        return false;
    }
}
