using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Slicing;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// Finds walls and gaps that are too thin over some height and length. What is thin only where an edge runs out (a
/// taper's rim, a corner) is left alone.
/// </summary>
internal sealed class WidthCheck
{
    private readonly PixelGrid grid;
    private readonly double limit;
    private readonly double layerHeight;
    private readonly UnionFind sets = new();
    private readonly List<Group> groups = [];
    private Dictionary<(int, int, bool), int> current = [];
    private Dictionary<(int, int, bool), int> previous = [];

    internal WidthCheck(PixelGrid grid, double pixels, double layerHeight)
    {
        this.grid = grid;
        this.layerHeight = layerHeight;
        limit = pixels * Math.Max(grid.PitchX, grid.PitchY);
    }

    /// <summary>What is as wide as this, mm, or wider is not thin.</summary>
    internal double Limit => limit;

    internal void Check(int layer, double z, IReadOnlyList<ThinSample> samples)
    {
        (current, previous) = (previous, current);
        current.Clear();
        foreach (ThinSample sample in samples)
            Add(layer, z, sample);
    }

    internal IEnumerable<LayerDefect> Defects =>
        groups
            .Where((g, i) => sets.Find(i) == i && Counts(g))
            .Select(g => new LayerDefect(
                g.Solid ? LayerDefectKind.ThinWall : LayerDefectKind.ThinGap,
                g.Place,
                g.First,
                g.Last,
                g.Least
            ));

    /// <summary>
    /// At least three times the limit high and, unless a column or hole, five times long; and no rim: a rim is low and
    /// its width runs out.
    /// </summary>
    private bool Counts(Group g)
    {
        double height = (g.Last - g.First + 1) * layerHeight;
        double length = Math.Max(g.Max.X - g.Min.X, g.Max.Y - g.Min.Y);
        if (height < 3 * limit || (!g.Small && length < 5 * limit))
            return false;
        return height >= 10 * limit || Math.Abs(g.LastWidth - g.FirstWidth) < limit / 3;
    }

    private void Add(int layer, double z, ThinSample s)
    {
        // Cells of four pixels; samples of one wall lie a pixel apart along it and over each other from layer to layer.
        int x = (int)Math.Floor((s.X - grid.Origin.X) / (4 * grid.PitchX)),
            y = (int)Math.Floor((s.Y - grid.Origin.Y) / (4 * grid.PitchY));
        var sample = new Group(
            s.Solid,
            s.Small,
            layer,
            layer,
            s.Width,
            s.Width,
            s.Width,
            new(s.X, s.Y, z),
            new(s.X, s.Y),
            new(s.X, s.Y)
        );
        int group = -1;
        for (int dx = -1; dx <= 1; dx++)
        for (int dy = -1; dy <= 1; dy++)
        {
            if (current.TryGetValue((x + dx, y + dy, s.Solid), out int beside))
                group = Join(group, beside);
            if (previous.TryGetValue((x + dx, y + dy, s.Solid), out int under))
                group = Join(group, under);
        }
        if (group >= 0)
        {
            groups[group] = groups[group].With(sample);
        }
        else
        {
            group = sets.Add();
            groups.Add(sample);
        }
        current[(x, y, s.Solid)] = group;
    }

    private int Join(int a, int b)
    {
        if (a < 0)
            return sets.Find(b);
        (int kept, int gone) = sets.Joined(a, b);
        if (kept != gone)
            groups[kept] = groups[kept].With(groups[gone]);
        return kept;
    }

    private sealed record Group(
        bool Solid,
        bool Small,
        int First,
        int Last,
        double Least,
        double FirstWidth,
        double LastWidth,
        Vector3D Place,
        Vector2D Min,
        Vector2D Max
    )
    {
        internal Group With(Group other) =>
            this with
            {
                Small = Small || other.Small,
                First = Math.Min(First, other.First),
                Last = Math.Max(Last, other.Last),
                FirstWidth =
                    First < other.First ? FirstWidth
                    : First > other.First ? other.FirstWidth
                    : Math.Min(FirstWidth, other.FirstWidth),
                LastWidth =
                    Last > other.Last ? LastWidth
                    : Last < other.Last ? other.LastWidth
                    : Math.Min(LastWidth, other.LastWidth),
                Least = Math.Min(Least, other.Least),
                Place = Least <= other.Least ? Place : other.Place,
                Min = new(Math.Min(Min.X, other.Min.X), Math.Min(Min.Y, other.Min.Y)),
                Max = new(Math.Max(Max.X, other.Max.X), Math.Max(Max.Y, other.Max.Y)),
            };
    }
}
