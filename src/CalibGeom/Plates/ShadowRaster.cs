using CalibGeom.Formats.Stl;

namespace CalibGeom.Plates;

/// <summary>
/// The shadow of parts as square cells over the plate. Every cell that a facet's shadow touches is marked, so the
/// marked area is never too small. Marking may go on from several threads at once, since cells are only ever set.
/// </summary>
internal sealed class ShadowRaster
{
    /// <summary>Cells along the plate's longer side.</summary>
    private const int Resolution = 2048;
    private const double Rounding = 1e-9;

    private readonly bool[] cells;
    private readonly double inverse;

    internal ShadowRaster(Plate plate)
    {
        Cell = Math.Max(plate.Width, plate.Depth) / Resolution;
        inverse = 1 / Cell;
        (MinX, MinY) = (plate.MinX, plate.MinY);
        Columns = (int)Math.Ceiling(plate.Width / Cell - Rounding);
        Rows = (int)Math.Ceiling(plate.Depth / Cell - Rounding);
        cells = new bool[Columns * Rows];
    }

    internal double Cell { get; }

    internal double MinX { get; }

    internal double MinY { get; }

    internal int Columns { get; }

    internal int Rows { get; }

    internal bool this[int column, int row] => cells[row * Columns + column];

    internal void Mark(ReadOnlySpan<StlFacet> facets, double ceiling)
    {
        Span<double> corners = stackalloc double[10];
        foreach (ref readonly StlFacet facet in facets)
        {
            int count = FacetFlattener.Flatten(in facet, ceiling, corners);
            if (count > 0)
                Mark(corners[..(2 * count)]);
        }
    }

    private void Mark(Span<double> corners)
    {
        double minX = double.PositiveInfinity,
            minY = minX,
            maxX = double.NegativeInfinity,
            maxY = maxX;
        for (int i = 0; i < corners.Length; i += 2)
        {
            double x = corners[i] = (corners[i] - MinX) * inverse,
                y = corners[i + 1] = (corners[i + 1] - MinY) * inverse;
            (minX, maxX) = (x < minX ? x : minX, x > maxX ? x : maxX);
            (minY, maxY) = (y < minY ? y : minY, y > maxY ? y : maxY);
        }
        if (!(maxX >= 0 && maxY >= 0 && minX <= Columns && minY <= Rows))
            return;
        int firstRow = Math.Max(0, (int)(minY - Rounding)),
            lastRow = Math.Min(Rows - 1, (int)(maxY + Rounding));
        int first = Math.Max(0, (int)(minX - Rounding)),
            last = Math.Min(Columns - 1, (int)(maxX + Rounding));
        if (lastRow <= firstRow + 1 && last <= first + 1)
        {
            for (int row = firstRow; row <= lastRow; row++)
                Mark(row, first, last);
            return;
        }
        for (int row = firstRow; row <= lastRow; row++)
        {
            (double low, double high) = Extent(corners, row - Rounding, row + 1 + Rounding);
            // A row may lie so far beside the raster that a whole number does not hold it.
            Mark(row, (int)Math.Clamp(low - Rounding, 0, Columns), (int)Math.Clamp(high + Rounding, -1, Columns - 1));
        }
    }

    private void Mark(int row, int first, int last)
    {
        for (int i = row * Columns + first; i <= row * Columns + last; i++)
            cells[i] = true;
    }

    /// <summary>The X range of a convex polygon within a strip of Y.</summary>
    private static (double Low, double High) Extent(ReadOnlySpan<double> corners, double y0, double y1)
    {
        double low = double.PositiveInfinity,
            high = double.NegativeInfinity;
        for (int i = 0, j = corners.Length - 2; i < corners.Length; j = i, i += 2)
        {
            double ax = corners[j],
                ay = corners[j + 1],
                bx = corners[i],
                by = corners[i + 1];
            if (ay > by)
                (ax, ay, bx, by) = (bx, by, ax, ay);
            if (by < y0 || ay > y1)
                continue;
            double x0 = ay < y0 ? ax + (y0 - ay) / (by - ay) * (bx - ax) : ax,
                x1 = by > y1 ? ax + (y1 - ay) / (by - ay) * (bx - ax) : bx;
            (low, high) = (Math.Min(low, Math.Min(x0, x1)), Math.Max(high, Math.Max(x0, x1)));
        }
        return (low, high);
    }

    /// <summary>
    /// The marked area as rectangles, two triangles each: runs of cells, joined over rows where they are equal.
    /// </summary>
    internal double[] ToTriangles()
    {
        var triangles = new List<double>();
        var open = new Dictionary<(int, int), int>();
        for (int row = 0; row <= Rows; row++)
        {
            var next = new Dictionary<(int, int), int>();
            if (row < Rows)
                foreach ((int, int) run in Runs(row))
                    next[run] = open.Remove(run, out int since) ? since : row;
            foreach (((int first, int last), int since) in open)
                AddRectangle(triangles, first, last + 1, since, row);
            open = next;
        }
        return triangles.ToArray();
    }

    private IEnumerable<(int First, int Last)> Runs(int row)
    {
        for (int column = 0; column < Columns; column++)
        {
            if (!this[column, row])
                continue;
            int first = column;
            while (column + 1 < Columns && this[column + 1, row])
                column++;
            yield return (first, column);
        }
    }

    private void AddRectangle(List<double> triangles, int column0, int column1, int row0, int row1)
    {
        double x0 = MinX + column0 * Cell,
            x1 = MinX + column1 * Cell,
            y0 = MinY + row0 * Cell,
            y1 = MinY + row1 * Cell;
        triangles.AddRange([x0, y0, x1, y0, x1, y1, x0, y0, x1, y1, x0, y1]);
    }
}
