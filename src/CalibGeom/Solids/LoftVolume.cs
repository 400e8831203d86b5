using CalibGeom.Planar;

namespace CalibGeom.Solids;

/// <summary>
/// Volume of one loft by the prismatoid rule h/6 (A0 + 4 Am + A1), exact for a body between two level faces.
/// </summary>
internal static class LoftVolume
{
    internal static double Of(Loft loft)
    {
        if (loft.Underside is { } plane)
            return UnderPlane(loft, plane);
        double middle =
            loft.Bottom.Rings.Zip(loft.Top.Rings, EightfoldMiddleArea).Select((a, i) => i == 0 ? a : -a).Sum() / 8;
        double scale = (double)Grid.UnitsPerMillimetre * Grid.UnitsPerMillimetre;
        return (loft.TopZ - loft.BottomZ) / 6 * (loft.Bottom.Area + 4 * middle / scale + loft.Top.Area);
    }

    /// <summary>
    /// Eight times the area of the section at half height, in square grid units; the section passes through the middles
    /// of the wall diagonals, where it may bend.
    /// </summary>
    private static double EightfoldMiddleArea(Outline bottom, Outline top)
    {
        ReadOnlySpan<GridPoint> b = bottom.Points,
            t = top.Points;
        Int128 sum = 0;
        for (int i = 0, j = b.Length - 1; i < b.Length; j = i++)
        {
            long startX = (long)b[j].X + t[j].X,
                startY = (long)b[j].Y + t[j].Y;
            long middleX = (long)b[j].X + t[i].X,
                middleY = (long)b[j].Y + t[i].Y;
            long endX = (long)b[i].X + t[i].X,
                endY = (long)b[i].Y + t[i].Y;
            sum +=
                (Int128)startX * middleY - (Int128)startY * middleX + (Int128)middleX * endY - (Int128)middleY * endX;
        }
        return (double)sum;
    }

    private static double UnderPlane(Loft loft, ObliquePlane plane)
    {
        double volume = 0;
        int sign = 1;
        foreach (Outline ring in loft.Top.Rings)
        {
            (double area, double x, double y) = Moments(ring);
            volume += sign * (area * (loft.TopZ - plane.Z0) - plane.SlopeX * x - plane.SlopeY * y);
            sign = -1;
        }
        return volume;
    }

    private static (double Area, double X, double Y) Moments(Outline ring)
    {
        double area = 0,
            x = 0,
            y = 0;
        ReadOnlySpan<GridPoint> p = ring.Points;
        for (int i = 0, j = p.Length - 1; i < p.Length; j = i++)
        {
            double ax = p[j].XMillimetres,
                ay = p[j].YMillimetres,
                bx = p[i].XMillimetres,
                by = p[i].YMillimetres;
            double cross = ax * by - ay * bx;
            area += cross / 2;
            x += cross * (ax + bx) / 6;
            y += cross * (ay + by) / 6;
        }
        return (area, x, y);
    }
}
