namespace CalibGeom.Planar;

/// <summary>
/// A rectangle turned to the segments that it holds: round long ones that run aslant side by side nearly as thin as
/// they are, where the bounds along the axes hold all their neighbours. After Gottschalk, Lin and Manocha, OBBTree,
/// 1996.
/// </summary>
internal readonly struct TurnedBox
{
    /// <summary>
    /// Grid units: a segment passes pixels whose middles are less than that from it; rounding is far less.
    /// </summary>
    private const double Near = 1;

    private readonly double middleX;
    private readonly double middleY;
    private readonly double alongX;
    private readonly double alongY;
    private readonly double length;
    private readonly double width;

    private TurnedBox(ReadOnlySpan<(double X, double Y)> points, double alongX, double alongY)
    {
        double size = Math.Sqrt(alongX * alongX + alongY * alongY);
        (this.alongX, this.alongY) = size > 0 ? (alongX / size, alongY / size) : (1, 0);
        (double X, double Y) low = (double.PositiveInfinity, double.PositiveInfinity),
            high = (double.NegativeInfinity, double.NegativeInfinity);
        foreach ((double x, double y) in points)
        {
            double along = x * this.alongX + y * this.alongY,
                across = y * this.alongX - x * this.alongY;
            (low.X, high.X) = (Math.Min(low.X, along), Math.Max(high.X, along));
            (low.Y, high.Y) = (Math.Min(low.Y, across), Math.Max(high.Y, across));
        }
        (length, width) = ((high.X - low.X) / 2, (high.Y - low.Y) / 2);
        (double u, double v) = ((high.X + low.X) / 2, (high.Y + low.Y) / 2);
        (middleX, middleY) = (u * this.alongX - v * this.alongY, u * this.alongY + v * this.alongX);
    }

    /// <summary>A box round segments, at least one, along the sum of their ways.</summary>
    internal static TurnedBox Round(ReadOnlySpan<(GridPoint A, GridPoint B)> segments)
    {
        Span<(double, double)> ends = stackalloc (double, double)[2 * segments.Length];
        double x = 0,
            y = 0;
        for (int i = 0; i < segments.Length; i++)
        {
            (GridPoint a, GridPoint b) = segments[i];
            (ends[2 * i], ends[2 * i + 1]) = ((a.X, a.Y), (b.X, b.Y));
            (x, y) = Sum(x, y, (double)b.X - a.X, (double)b.Y - a.Y);
        }
        return new(ends, x, y);
    }

    /// <summary>A box round two.</summary>
    internal static TurnedBox Round(in TurnedBox one, in TurnedBox other)
    {
        Span<(double, double)> corners = stackalloc (double, double)[8];
        one.Corners(corners);
        other.Corners(corners[4..]);
        (double x, double y) = Sum(
            one.alongX * one.length,
            one.alongY * one.length,
            other.alongX * other.length,
            other.alongY * other.length
        );
        return new(corners, x, y);
    }

    /// <summary>Whether two boxes may come within a grid unit of each other; never false where they do.</summary>
    internal bool Meets(in TurnedBox other)
    {
        double wayX = other.middleX - middleX,
            wayY = other.middleY - middleY;
        double cos = Math.Abs(alongX * other.alongX + alongY * other.alongY),
            sin = Math.Abs(alongX * other.alongY - alongY * other.alongX);
        return Math.Abs(wayY * alongX - wayX * alongY) <= width + other.length * sin + other.width * cos + Near
            && Math.Abs(wayX * alongX + wayY * alongY) <= length + other.length * cos + other.width * sin + Near
            && Math.Abs(wayY * other.alongX - wayX * other.alongY) <= other.width + length * sin + width * cos + Near
            && Math.Abs(wayX * other.alongX + wayY * other.alongY) <= other.length + length * cos + width * sin + Near;
    }

    private static (double X, double Y) Sum(double x, double y, double nextX, double nextY) =>
        x * nextX + y * nextY < 0 ? (x - nextX, y - nextY) : (x + nextX, y + nextY);

    private void Corners(Span<(double X, double Y)> corners)
    {
        (double u, double v) = (alongX * length, alongY * length);
        (double s, double t) = (-alongY * width, alongX * width);
        corners[0] = (middleX + u + s, middleY + v + t);
        corners[1] = (middleX + u - s, middleY + v - t);
        corners[2] = (middleX - u + s, middleY - v + t);
        corners[3] = (middleX - u - s, middleY - v - t);
    }
}
