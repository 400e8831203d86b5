using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Layout;

/// <summary>Something that may be in the way of light: a convex outline seen from above, between two heights.</summary>
internal sealed class Obstacle
{
    private readonly (double X, double Y)[] points;
    private readonly double middleX;
    private readonly double middleY;
    private readonly double squaredRadius;

    private (double X, double Y)[]? outline;

    private Obstacle(string owner, (double X, double Y)[] points, double bottom, double top)
    {
        (Owner, this.points, Bottom, Top) = (owner, points, bottom, top);
        (double X, double Y) low = points[0],
            high = points[0];
        foreach ((double x, double y) in points)
        {
            low = (Math.Min(low.X, x), Math.Min(low.Y, y));
            high = (Math.Max(high.X, x), Math.Max(high.Y, y));
        }
        (middleX, middleY) = ((low.X + high.X) / 2, (low.Y + high.Y) / 2);
        foreach ((double x, double y) in points)
            squaredRadius = Math.Max(squaredRadius, Squared(x - middleX, y - middleY));
        // A hair wider, so that rounding never leaves out what a line touches.
        squaredRadius *= 1.000001;
    }

    /// <summary>The hull of all points, worked out when a line first comes near.</summary>
    private (double X, double Y)[] Outline => outline ??= ConvexHull.Of(points);

    /// <summary>The part it belongs to.</summary>
    internal string Owner { get; }

    /// <summary>Its lowest place, mm above the plate.</summary>
    internal double Bottom { get; }

    /// <summary>Its highest place, mm above the plate.</summary>
    internal double Top { get; }

    /// <summary>A rectangle that reaches from the plate to a height.</summary>
    internal static Obstacle Of(string owner, Rect r, double top) =>
        new(owner, [(r.X0, r.Y0), (r.X1, r.Y0), (r.X1, r.Y1), (r.X0, r.Y1)], 0, top);

    /// <summary>
    /// The hull of a loft's outlines between its levels: exact where its walls are upright and convex.
    /// </summary>
    internal static Obstacle Of(string owner, Loft loft)
    {
        ReadOnlySpan<GridPoint> bottom = loft.Bottom.Outer.Points,
            top = loft.Top.Outer.Points;
        var points = new (double, double)[bottom.Length + top.Length];
        for (int i = 0; i < bottom.Length; i++)
        {
            points[i] = (bottom[i].XMillimetres, bottom[i].YMillimetres);
            points[bottom.Length + i] = (top[i].XMillimetres, top[i].YMillimetres);
        }
        return new(owner, points, loft.BottomZ, loft.TopZ);
    }

    /// <summary>
    /// The part of an endless line above or below it, counted in ways from one point to another; null when the line
    /// passes beside.
    /// </summary>
    internal (double From, double To)? Within((double X, double Y) first, (double X, double Y) second)
    {
        (double x, double y) = (second.X - first.X, second.Y - first.Y);
        // Most lines pass beside the circle round it, which is told faster.
        double beside = x * (middleY - first.Y) - y * (middleX - first.X);
        if (beside * beside > squaredRadius * Squared(x, y))
            return null;
        (double from, double to) = (double.NegativeInfinity, double.PositiveInfinity);
        (double X, double Y)[] outline = Outline;
        for (int i = 0, j = outline.Length - 1; i < outline.Length; j = i++)
        {
            // Left of every side is inside.
            (double sideX, double sideY) = (outline[i].X - outline[j].X, outline[i].Y - outline[j].Y);
            double start = sideX * (first.Y - outline[j].Y) - sideY * (first.X - outline[j].X),
                along = sideX * y - sideY * x;
            if (along > 0)
                from = Math.Max(from, -start / along);
            else if (along < 0)
                to = Math.Min(to, -start / along);
            else if (start <= 0)
                return null;
            if (from >= to)
                return null;
        }
        return (from, to);
    }

    private static double Squared(double x, double y) => x * x + y * y;
}
