using CalibGeom.Meshes;

namespace CalibGeom.Slicing;

/// <summary>
/// Coverage of a layer in which shells overlap: each row of pixels is cut into bands at every vertex and every eighth
/// of a pixel, and each band counts
/// with what is covered along its middle line, where the winding number is positive.
/// </summary>
internal sealed class OverlapRows
{
    private const int Bands = 8;
    private readonly PixelGrid grid;
    private readonly List<(Vector2D Low, Vector2D High, int Sign)> edges = [];
    private readonly List<int>?[] edgesOfRow;
    private readonly double[] coverage;
    private readonly List<(double X, int Sign)> crossings = [];

    internal OverlapRows(LayerContours layer, PixelGrid grid)
    {
        this.grid = grid;
        coverage = new double[grid.Width];
        edgesOfRow = new List<int>?[grid.Height];
        for (int i = 0; i < layer.Count; i++)
        {
            ReadOnlySpan<Vector2D> ring = layer[i];
            for (int k = 0, j = ring.Length - 1; k < ring.Length; j = k++)
                Add(ToPixels(ring[j]), ToPixels(ring[k]));
        }
    }

    internal void Sum(int row, List<CoverageSpan> spans)
    {
        if (edgesOfRow[row] is not { } here)
            return;
        Array.Clear(coverage);
        var cuts = new List<double>(Enumerable.Range(0, Bands + 1).Select(i => row + i / (double)Bands));
        foreach (int e in here)
        {
            if (edges[e].Low.Y > row)
                cuts.Add(edges[e].Low.Y);
            if (edges[e].High.Y < row + 1)
                cuts.Add(edges[e].High.Y);
        }
        cuts.Sort();
        for (int i = 1; i < cuts.Count; i++)
            if (cuts[i] > cuts[i - 1])
                AddBand(here, (cuts[i] + cuts[i - 1]) / 2, cuts[i] - cuts[i - 1]);
        for (int x = 0; x < grid.Width; x++)
            if (coverage[x] > 1e-7)
                spans.Add(new CoverageSpan(x, x + 1, coverage[x] > 1 - 1e-7 ? 1 : (float)coverage[x]));
    }

    private void Add(Vector2D a, Vector2D b)
    {
        if (a.Y == b.Y)
            return;
        edges.Add(a.Y < b.Y ? (a, b, -1) : (b, a, 1));
        (Vector2D low, Vector2D high, _) = edges[^1];
        int last = (int)Math.Min(grid.Height - 1, Math.Ceiling(high.Y) - 1);
        for (int row = (int)Math.Max(0, Math.Floor(low.Y)); row <= last; row++)
            (edgesOfRow[row] ??= []).Add(edges.Count - 1);
    }

    private void AddBand(List<int> here, double y, double height)
    {
        crossings.Clear();
        foreach (int e in here)
        {
            (Vector2D low, Vector2D high, int sign) = edges[e];
            if (low.Y < y && y <= high.Y)
                crossings.Add((low.X + (y - low.Y) * (high.X - low.X) / (high.Y - low.Y), sign));
        }
        crossings.Sort();
        for (int i = 0, winding = 0; i < crossings.Count; i++)
        {
            if (winding > 0)
                Cover(crossings[i - 1].X, crossings[i].X, height);
            winding += crossings[i].Sign;
        }
    }

    private void Cover(double from, double to, double height)
    {
        from = Math.Max(from, 0);
        to = Math.Min(to, grid.Width);
        for (int x = (int)from; x < to; x++)
            coverage[x] += height * (Math.Min(to, x + 1) - Math.Max(from, x));
    }

    private Vector2D ToPixels(Vector2D p) =>
        new((p.X - grid.Origin.X) / grid.PitchX, (p.Y - grid.Origin.Y) / grid.PitchY);
}
