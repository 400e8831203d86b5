using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Slicing;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// Finds what no section passes through: undersides between two sections with material in neither, such as a level fin
/// thinner than a layer. Safe to share between threads.
/// </summary>
internal sealed class BetweenLayers
{
    // Pixels; nearer to the material of a section a border may be rounded either way.
    private const int Rounding = 2;
    private const int LeastPixels = 4;

    private readonly TriangleMesh mesh;
    private readonly PixelGrid grid;
    private readonly int[] starts;
    private readonly int[] order;

    internal BetweenLayers(TriangleMesh mesh, LayerSlicer slicer, PixelGrid grid)
    {
        (this.mesh, this.grid) = (mesh, grid);
        var slab = new int[mesh.TriangleCount];
        starts = new int[slicer.LayerCount + 2];
        for (int t = 0; t < slab.Length; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
            int lowest = slicer.FirstAbove(Math.Min(a.Z, Math.Min(b.Z, c.Z)));
            bool facesDown = (b.X - a.X) * (c.Y - a.Y) - (b.Y - a.Y) * (c.X - a.X) < 0;
            slab[t] = facesDown && slicer.FirstAbove(Math.Max(a.Z, Math.Max(b.Z, c.Z))) == lowest ? lowest : -1;
            if (slab[t] >= 0)
                starts[slab[t] + 1]++;
        }
        for (int k = 0; k + 1 < starts.Length; k++)
            starts[k + 1] += starts[k];
        int[] next = [.. starts];
        order = new int[starts[^1]];
        for (int t = 0; t < slab.Length; t++)
            if (slab[t] >= 0)
                order[next[slab[t]]++] = t;
    }

    /// <summary>What is lost between the section of a layer and that of the layer below it.</summary>
    /// <param name="layer">The upper layer; the number of layers for what lies above the last section.</param>
    /// <param name="below">The layer below; null below the first.</param>
    /// <param name="above">The layer; null above the last.</param>
    internal IEnumerable<LayerDefect> Check(int layer, LayerMask? below, LayerMask? above)
    {
        if (starts[layer] == starts[layer + 1])
            return [];
        LayerMask lost = Lost(Undersides(layer), below, above);
        return lost.PixelCount < LeastPixels ? [] : Describe(lost, layer);
    }

    private List<PixelRun>[] Undersides(int layer)
    {
        var rows = new List<PixelRun>[grid.Height];
        for (int i = starts[layer]; i < starts[layer + 1]; i++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(order[i]);
            int first = Row(Math.Min(a.Y, Math.Min(b.Y, c.Y))),
                last = Row(Math.Max(a.Y, Math.Max(b.Y, c.Y)));
            for (int y = Math.Max(0, first); y < Math.Min(grid.Height, last); y++)
            {
                double at = grid.Origin.Y + (y + 0.5) * grid.PitchY;
                (double from, double to) = (double.PositiveInfinity, double.NegativeInfinity);
                Cross(a, b, at, ref from, ref to);
                Cross(b, c, at, ref from, ref to);
                Cross(c, a, at, ref from, ref to);
                int start = Math.Max(0, Column(from)),
                    end = Math.Min(grid.Width, Column(to));
                if (end > start)
                    (rows[y] ??= []).Add(new PixelRun(start, end));
            }
        }
        return rows;
    }

    /// <summary>The first row and column whose middle lies at or beyond a coordinate.</summary>
    private int Row(double y) => (int)Math.Ceiling((y - grid.Origin.Y) / grid.PitchY - 0.5);

    private int Column(double x) => double.IsFinite(x) ? (int)Math.Ceiling((x - grid.Origin.X) / grid.PitchX - 0.5) : 0;

    private static void Cross(Vector3D a, Vector3D b, double y, ref double from, ref double to)
    {
        if (a.Y > y == b.Y > y)
            return;
        double x = a.X + (y - a.Y) / (b.Y - a.Y) * (b.X - a.X);
        (from, to) = (Math.Min(from, x), Math.Max(to, x));
    }

    private LayerMask Lost(List<PixelRun>[] rows, LayerMask? below, LayerMask? above)
    {
        double reach = Rounding * Math.Max(grid.PitchX, grid.PitchY);
        var builder = new LayerMaskBuilder(grid);
        for (int y = 0; y < grid.Height; y++)
        {
            int done = 0;
            foreach (PixelRun run in (rows[y] ?? []).OrderBy(r => r.Start))
            {
                for (int x = Math.Max(done, run.Start); x < run.End; )
                {
                    int beyond = x;
                    if (below is not null)
                        beyond = below.FirstBeyond(y, new PixelRun(beyond, run.End), reach);
                    if (above is not null && beyond < run.End)
                        beyond = above.FirstBeyond(y, new PixelRun(beyond, run.End), reach);
                    if (beyond == x)
                        builder.Add(x, ++x);
                    else
                        x = beyond;
                }
                done = Math.Max(done, run.End);
            }
            builder.EndRow();
        }
        return builder.ToMask();
    }

    private IEnumerable<LayerDefect> Describe(LayerMask lost, int layer)
    {
        var pieces = new RunLabels(lost, diagonal: true);
        var found = new (long Pixels, int X, int Y)[pieces.Count];
        for (int y = 0, number = 0; y < grid.Height; y++)
            foreach (PixelRun run in lost.Row(y))
            {
                ref (long Pixels, int X, int Y) piece = ref found[pieces[number++]];
                if (piece.Pixels == 0)
                    (piece.X, piece.Y) = ((run.Start + run.End - 1) / 2, y);
                piece.Pixels += run.Length;
            }
        double z = mesh.Triangle(order[starts[layer]]).A.Z;
        return
        [
            .. found
                .Where(p => p.Pixels >= LeastPixels)
                .Select(p =>
                {
                    Vector2D middle = grid.Middle(p.X, p.Y);
                    return new LayerDefect(
                        LayerDefectKind.BetweenLayers,
                        new Vector3D(middle.X, middle.Y, z),
                        Math.Max(0, layer - 1),
                        layer,
                        p.Pixels * grid.PixelArea
                    );
                }),
        ];
    }
}
