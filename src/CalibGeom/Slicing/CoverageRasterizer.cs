using System.Runtime.InteropServices;
using CalibGeom.Planar;

namespace CalibGeom.Slicing;

/// <summary>
/// Draws contours as coverage. Each edge leaves in every pixel it passes how much height it takes there (signed) and
/// how much of the pixel lies to its right; a running sum along the row then gives the exact area. Reusable; not safe
/// to share between threads.
/// </summary>
/// <param name="grid">The field of pixels; what lies outside is cut off.</param>
public sealed class CoverageRasterizer(PixelGrid grid)
{
    private const double Tolerance = 1e-7;
    private readonly PixelGrid grid = grid ?? throw new ArgumentNullException(nameof(grid));
    private readonly List<Cell> cells = [];
    private readonly int[] next = new int[grid.Height + 1];
    private readonly int[] rows = new int[grid.Height + 1];
    private readonly int[] starts = new int[grid.Height + 1];
    private readonly List<CoverageSpan> spans = [];
    private Cell[] sorted = [];

    /// <summary>The share of every pixel that a layer covers.</summary>
    /// <param name="layer">The contours of one layer.</param>
    public CoverageRaster Draw(LayerContours layer)
    {
        ArgumentNullException.ThrowIfNull(layer);
        bool overlaps = Cover(layer);
        return new CoverageRaster(grid, starts.AsSpan().ToArray(), spans.ToArray(), overlaps);
    }

    /// <summary>
    /// The pixels covered by half or more and, where shells overlap, the covered area, mm2; null elsewhere: the
    /// contours tell it. Leaves no raster behind.
    /// </summary>
    internal LayerMask Mask(LayerContours layer, out double? area)
    {
        bool overlaps = Cover(layer);
        var raster = new SpanRows(grid, starts, CollectionsMarshal.AsSpan(spans));
        area = overlaps ? raster.Area : null;
        return raster.ToMask();
    }

    /// <summary>Fills the spans, row by row; whether shells overlap.</summary>
    private bool Cover(LayerContours layer)
    {
        cells.Clear();
        spans.Clear();
        for (int i = 0; i < layer.Count; i++)
            AddContour(layer[i]);
        SortByRow();
        OverlapRows? overlaps = null;
        for (int y = 0; y < grid.Height; y++)
        {
            bool told = Sum(sorted.AsSpan(rows[y], rows[y + 1] - rows[y]));
            if (told && overlaps is null)
            {
                starts[y + 1] = spans.Count;
                continue;
            }
            // Where shells overlap in a row that is covered in part, the sum cannot tell: neither in the row before.
            if (overlaps is null)
            {
                overlaps = new OverlapRows(layer, grid);
                y = Math.Max(0, y - 1);
            }
            spans.RemoveRange(starts[y], spans.Count - starts[y]);
            overlaps.Sum(y, spans);
            starts[y + 1] = spans.Count;
        }
        return overlaps is not null;
    }

    private void AddContour(ReadOnlySpan<Vector2D> ring)
    {
        Vector2D a = ToPixels(ring[^1]);
        foreach (Vector2D p in ring)
        {
            Vector2D b = ToPixels(p);
            if (a.Y < b.Y)
                AddEdge(a, b, -1);
            else if (a.Y > b.Y)
                AddEdge(b, a, 1);
            a = b;
        }
    }

    private Vector2D ToPixels(Vector2D p) =>
        new((p.X - grid.Origin.X) / grid.PitchX, (p.Y - grid.Origin.Y) / grid.PitchY);

    private void AddEdge(Vector2D low, Vector2D high, int sign)
    {
        double slope = (high.X - low.X) / (high.Y - low.Y);
        int first = (int)Math.Max(0, Math.Floor(low.Y)),
            last = (int)Math.Min(grid.Height - 1, Math.Ceiling(high.Y) - 1);
        for (int row = first; row <= last; row++)
        {
            double y0 = Math.Max(low.Y, row),
                y1 = Math.Min(high.Y, row + 1);
            double x0 = y0 == low.Y ? low.X : low.X + (y0 - low.Y) * slope;
            double x1 = y1 == high.Y ? high.X : low.X + (y1 - low.Y) * slope;
            AddInRow(row, Math.Min(x0, x1), Math.Max(x0, x1), sign * (y1 - y0));
        }
    }

    /// <summary>Spreads a piece of edge over the pixels it passes within a row.</summary>
    private void AddInRow(int row, double left, double right, double height)
    {
        if (left < 0)
        {
            double outside = right <= 0 ? height : height * (-left / (right - left));
            cells.Add(new Cell(row, 0, outside, outside));
            if (right <= 0)
                return;
            height -= outside;
            left = 0;
        }
        int first = (int)left,
            last = (int)right;
        double remaining = height;
        for (int x = first; x <= last && x < grid.Width; x++)
        {
            double from = Math.Max(left, x),
                to = Math.Min(right, x + 1);
            double part = x == last ? remaining : height * ((to - from) / (right - left));
            remaining -= part;
            if (part != 0)
                cells.Add(new Cell(row, x, part, part * (x + 1 - (from + to) / 2)));
        }
    }

    private void SortByRow()
    {
        Array.Clear(next);
        foreach (Cell cell in cells)
            next[cell.Row + 1]++;
        for (int y = 0; y < grid.Height; y++)
            next[y + 1] += next[y];
        next.CopyTo(rows, 0);
        if (sorted.Length < cells.Count)
            sorted = new Cell[Math.Max(cells.Count, 2 * sorted.Length)];
        foreach (Cell cell in cells)
            sorted[next[cell.Row]++] = cell;
        for (int y = 0; y < grid.Height; y++)
            sorted.AsSpan(rows[y], rows[y + 1] - rows[y]).Sort(static (a, b) => a.X.CompareTo(b.X));
    }

    /// <summary>Turns a row's cells into spans; false when a winding number other than 0 and 1 shows up.</summary>
    private bool Sum(ReadOnlySpan<Cell> row)
    {
        double winding = 0;
        for (int i = 0; i < row.Length; )
        {
            int x = row[i].X;
            double here = winding;
            for (; i < row.Length && row[i].X == x; i++)
            {
                here += row[i].RightOf;
                winding += row[i].Height;
            }
            int end = i < row.Length ? row[i].X : grid.Width;
            if (!Append(x, x + 1, here) || (x + 1 < end && !Append(x + 1, end, winding)))
                return false;
        }
        return true;
    }

    private bool Append(int start, int end, double coverage)
    {
        if (coverage < -Tolerance || coverage > 1 + Tolerance)
            return false;
        if (coverage < Tolerance)
            return true;
        spans.Add(new CoverageSpan(start, end, coverage > 1 - Tolerance ? 1 : (float)coverage));
        return true;
    }

    private readonly record struct Cell(int Row, int X, double Height, double RightOf);
}
