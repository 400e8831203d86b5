namespace CalibGeom.TestObjects.Parts;

/// <summary>An axis-parallel rectangle seen from above, mm.</summary>
/// <param name="X0">Least x.</param>
/// <param name="Y0">Least y.</param>
/// <param name="X1">Greatest x.</param>
/// <param name="Y1">Greatest y.</param>
public readonly record struct Rect(double X0, double Y0, double X1, double Y1)
{
    /// <summary>What rounding of positions to the grid may take from a distance, mm.</summary>
    internal const double Slack = 1e-4;

    /// <summary>Along x, mm.</summary>
    public double Width => X1 - X0;

    /// <summary>Along y, mm.</summary>
    public double Depth => Y1 - Y0;

    /// <summary>A rectangle about the origin.</summary>
    /// <param name="width">Along x, mm.</param>
    /// <param name="depth">Along y, mm.</param>
    public static Rect Centred(double width, double depth) => new(-width / 2, -depth / 2, width / 2, depth / 2);

    /// <summary>The rectangle moved.</summary>
    /// <param name="dx">mm.</param>
    /// <param name="dy">mm.</param>
    public Rect Move(double dx, double dy) => new(X0 + dx, Y0 + dy, X1 + dx, Y1 + dy);

    /// <summary>The rectangle with every side moved outward, inward when negative.</summary>
    /// <param name="by">mm.</param>
    public Rect Grow(double by) => new(X0 - by, Y0 - by, X1 + by, Y1 + by);

    /// <summary>The rectangle turned about the origin.</summary>
    /// <param name="quarters">Counter-clockwise, by how many quarters of a turn.</param>
    public Rect Turn(int quarters) =>
        (quarters & 3) switch
        {
            0 => this,
            1 => new(-Y1, X0, -Y0, X1),
            2 => new(-X1, -Y1, -X0, -Y0),
            _ => new(Y0, -X1, Y1, -X0),
        };

    /// <summary>The distance to another, 0 when they meet, mm.</summary>
    /// <param name="other">The other.</param>
    public double DistanceTo(Rect other)
    {
        double x = Math.Max(0, Math.Max(other.X0 - X1, X0 - other.X1)),
            y = Math.Max(0, Math.Max(other.Y0 - Y1, Y0 - other.Y1));
        return Math.Sqrt(x * x + y * y);
    }

    /// <summary>The smallest rectangle round both.</summary>
    /// <param name="other">The other.</param>
    public Rect Join(Rect other) =>
        new(Math.Min(X0, other.X0), Math.Min(Y0, other.Y0), Math.Max(X1, other.X1), Math.Max(Y1, other.Y1));

    /// <summary>Whether the insides have a point in common; rectangles that only touch do not.</summary>
    internal bool Meets(Rect other) =>
        X0 < other.X1 - Slack && other.X0 < X1 - Slack && Y0 < other.Y1 - Slack && other.Y0 < Y1 - Slack;
}
