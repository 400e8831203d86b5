namespace CalibGeom.TestObjects.Layout;

/// <summary>An axis-parallel rectangle seen from above, mm.</summary>
internal readonly record struct Rect(double X0, double Y0, double X1, double Y1)
{
    internal double Width => X1 - X0;

    internal double Depth => Y1 - Y0;

    internal Rect Move(double dx, double dy) => new(X0 + dx, Y0 + dy, X1 + dx, Y1 + dy);

    internal Rect Grow(double by) => new(X0 - by, Y0 - by, X1 + by, Y1 + by);

    /// <summary>Whether the insides have a point in common; rectangles that only touch do not.</summary>
    internal bool Meets(Rect other) =>
        X0 < other.X1 - Slack && other.X0 < X1 - Slack && Y0 < other.Y1 - Slack && other.Y0 < Y1 - Slack;

    /// <summary>The distance between the rectangles, 0 when they meet.</summary>
    internal double DistanceTo(Rect other)
    {
        double x = Math.Max(0, Math.Max(other.X0 - X1, X0 - other.X1)),
            y = Math.Max(0, Math.Max(other.Y0 - Y1, Y0 - other.Y1));
        return Math.Sqrt(x * x + y * y);
    }

    internal Rect Join(Rect other) =>
        new(Math.Min(X0, other.X0), Math.Min(Y0, other.Y0), Math.Max(X1, other.X1), Math.Max(Y1, other.Y1));

    /// <summary>What rounding of positions may take from a distance, mm.</summary>
    internal const double Slack = 1e-4;

    internal static Rect Centred(double width, double depth) => new(-width / 2, -depth / 2, width / 2, depth / 2);
}
