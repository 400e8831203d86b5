namespace CalibGeom.Plates;

/// <summary>Where coupons of a map should go.</summary>
internal static class MapTargets
{
    private const int Lattice = 32;

    /// <summary>Points spread over the plate less its margin.</summary>
    internal static IReadOnlyList<(double X, double Y)> Spread(Plate plate, int count)
    {
        double x0 = plate.MinX + plate.Margin,
            x1 = plate.MaxX - plate.Margin,
            y0 = plate.MinY + plate.Margin,
            y1 = plate.MaxY - plate.Margin;
        (double X, double Y) centre = (plate.CentreX, plate.CentreY);
        if (count == 1)
            return [centre];
        if (count <= 3)
            return new[] { (x0, y0), (x1, y1), centre }.Take(count).ToArray();
        var points = new List<(double X, double Y)> { (x0, y0), (x1, y0), (x0, y1), (x1, y1), centre };
        while (points.Count < count)
            points.Add(Furthest(points, x0, y0, x1, y1));
        return points.Take(count).ToArray();
    }

    /// <summary>
    /// Where the middle of a footprint lies when it stands in each corner: front left, front right, back left, back
    /// right.
    /// </summary>
    internal static (double X, double Y)[] Corners(Plate plate, double gap, Footprint footprint)
    {
        double dx = plate.Margin + gap + footprint.Width / 2,
            dy = plate.Margin + gap + footprint.Depth / 2;
        return
        [
            (plate.MinX + dx, plate.MinY + dy),
            (plate.MaxX - dx, plate.MinY + dy),
            (plate.MinX + dx, plate.MaxY - dy),
            (plate.MaxX - dx, plate.MaxY - dy),
        ];
    }

    private static (double X, double Y) Furthest(
        List<(double X, double Y)> points,
        double x0,
        double y0,
        double x1,
        double y1
    )
    {
        ((double X, double Y) Point, double Distance) best = (points[0], -1);
        for (int row = 0; row <= Lattice; row++)
        for (int column = 0; column <= Lattice; column++)
        {
            double x = x0 + (x1 - x0) * column / Lattice,
                y = y0 + (y1 - y0) * row / Lattice;
            double distance = points.Min(p => double.Hypot(p.X - x, p.Y - y));
            if (distance > best.Distance + 1e-9)
                best = ((x, y), distance);
        }
        return best.Point;
    }
}
