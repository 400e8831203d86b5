using CalibGeom.Planar;

namespace CalibGeom.Pictures.Objects;

/// <summary>A rectangle on a sheet, Y down, mm.</summary>
internal readonly record struct Room(double X, double Y, double Width, double Height)
{
    internal double Right => X + Width;

    internal double Bottom => Y + Height;

    internal bool Overlaps(Room other) => X < other.Right && other.X < Right && Y < other.Bottom && other.Y < Bottom;

    internal bool IsIn(Room other) => X >= other.X && Right <= other.Right && Y >= other.Y && Bottom <= other.Bottom;

    internal Room Grow(double by) => new(X - by, Y - by, Width + 2 * by, Height + 2 * by);

    /// <summary>Whether a line reaches into the rectangle (Liang and Barsky's clipping).</summary>
    internal bool IsCrossed(Vector2D a, Vector2D b)
    {
        double from = 0,
            to = 1;
        return Clip(a.X - b.X, a.X - X)
            && Clip(b.X - a.X, Right - a.X)
            && Clip(a.Y - b.Y, a.Y - Y)
            && Clip(b.Y - a.Y, Bottom - a.Y);

        bool Clip(double p, double q)
        {
            if (p == 0)
                return q > 0;
            double t = q / p;
            if (p < 0)
                from = Math.Max(from, t);
            else
                to = Math.Min(to, t);
            return from < to;
        }
    }
}
