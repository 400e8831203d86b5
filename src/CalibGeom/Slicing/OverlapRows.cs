using CalibGeom.Planar;

namespace CalibGeom.Slicing;

/// <summary>
/// Coverage of rows in which shells overlap: each row of pixels is cut into bands at every vertex and every eighth of a
/// pixel, and each band counts with what is covered along its middle line, where the winding number is positive. A row
/// that edges pass straight is one band. Takes time for the places where edges are, not for the pixels between.
/// </summary>
internal sealed class OverlapRows
{
    private const int Bands = 8;

    // Pixels; edges that lean by less within a row are as good as upright.
    private const double Upright = 1.0 / 256;
    private const float Nothing = 1e-7f;

    private readonly PixelGrid grid;
    private readonly List<(Vector2D Low, Vector2D High, int Sign)> edges = [];
    private readonly int[] firstOfRow;
    private readonly int[] edgesOfRows;
    private readonly List<(double X, int Sign)> crossings = [];
    private readonly List<(int X, double Here, double From)> changes = [];
    private readonly List<double> cuts = [];

    internal OverlapRows(LayerContours layer, PixelGrid grid)
    {
        this.grid = grid;
        for (int i = 0; i < layer.Count; i++)
        {
            ReadOnlySpan<Vector2D> ring = layer[i];
            for (int k = 0, j = ring.Length - 1; k < ring.Length; j = k++)
                Add(ToPixels(ring[j]), ToPixels(ring[k]));
        }
        firstOfRow = new int[grid.Height + 1];
        foreach ((Vector2D low, Vector2D high, _) in edges)
            for (int row = First(low); row <= Last(high); row++)
                firstOfRow[row + 1]++;
        for (int row = 0; row < grid.Height; row++)
            firstOfRow[row + 1] += firstOfRow[row];
        int[] next = [.. firstOfRow];
        edgesOfRows = new int[firstOfRow[grid.Height]];
        for (int e = 0; e < edges.Count; e++)
        for (int row = First(edges[e].Low); row <= Last(edges[e].High); row++)
            edgesOfRows[next[row]++] = e;
    }

    internal void Sum(int row, List<CoverageSpan> spans)
    {
        ReadOnlySpan<int> here = edgesOfRows.AsSpan(firstOfRow[row], firstOfRow[row + 1] - firstOfRow[row]);
        if (here.Length == 0)
            return;
        changes.Clear();
        Cut(row, here);
        for (int i = 1; i < cuts.Count; i++)
            if (cuts[i] > cuts[i - 1])
                AddBand(here, (cuts[i] + cuts[i - 1]) / 2, cuts[i] - cuts[i - 1]);
        changes.Sort((a, b) => a.X.CompareTo(b.X));
        Collect(spans);
    }

    private void Add(Vector2D a, Vector2D b)
    {
        if (a.Y != b.Y)
            edges.Add(a.Y < b.Y ? (a, b, -1) : (b, a, 1));
    }

    private static int First(Vector2D low) => (int)Math.Max(0, Math.Floor(low.Y));

    private int Last(Vector2D high) => (int)Math.Min(grid.Height - 1, Math.Ceiling(high.Y) - 1);

    private void Cut(int row, ReadOnlySpan<int> here)
    {
        cuts.Clear();
        bool upright = true;
        foreach (int e in here)
        {
            (Vector2D low, Vector2D high, _) = edges[e];
            if (low.Y > row)
                cuts.Add(low.Y);
            if (high.Y < row + 1)
                cuts.Add(high.Y);
            double inRow = Math.Min(high.Y, row + 1) - Math.Max(low.Y, row);
            upright &= Math.Abs(high.X - low.X) * inRow <= Upright * (high.Y - low.Y);
        }
        cuts.Add(row);
        cuts.Add(row + 1);
        for (int i = 1; i < Bands && !upright; i++)
            cuts.Add(row + i / (double)Bands);
        cuts.Sort();
    }

    private void AddBand(ReadOnlySpan<int> here, double y, double height)
    {
        crossings.Clear();
        foreach (int e in here)
        {
            (Vector2D low, Vector2D high, int sign) = edges[e];
            if (low.Y < y && y <= high.Y)
                crossings.Add((low.X + (y - low.Y) * (high.X - low.X) / (high.Y - low.Y), sign));
        }
        crossings.Sort();
        for (int i = 0, winding = 0, since = 0; i < crossings.Count; i++)
        {
            int before = winding;
            winding += crossings[i].Sign;
            if (before <= 0 && winding > 0)
                since = i;
            else if (before > 0 && winding <= 0)
                Cover(crossings[since].X, crossings[i].X, height);
        }
    }

    /// <summary>Notes where covering begins and ends: what it takes of that pixel, and of all from it on.</summary>
    private void Cover(double from, double to, double height)
    {
        from = Math.Max(from, 0);
        to = Math.Min(to, grid.Width);
        if (to <= from)
            return;
        changes.Add(((int)from, height * ((int)from + 1 - from), height));
        changes.Add(((int)to, -height * ((int)to + 1 - to), -height));
    }

    private void Collect(List<CoverageSpan> spans)
    {
        double before = 0;
        for (int i = 0; i < changes.Count; )
        {
            int x = changes[i].X;
            double here = before;
            for (; i < changes.Count && changes[i].X == x; i++)
            {
                here += changes[i].Here;
                before += changes[i].From;
            }
            Append(spans, x, x + 1, here);
            if (i < changes.Count)
                Append(spans, x + 1, changes[i].X, before);
        }
    }

    private void Append(List<CoverageSpan> spans, int start, int end, double coverage)
    {
        if (start < Math.Min(end, grid.Width) && coverage > Nothing)
            spans.Add(new CoverageSpan(start, end, coverage > 1 - Nothing ? 1 : (float)coverage));
    }

    private Vector2D ToPixels(Vector2D p) =>
        new((p.X - grid.Origin.X) / grid.PitchX, (p.Y - grid.Origin.Y) / grid.PitchY);
}
