namespace CalibGeom.Planar;

/// <summary>A point of the plane in grid units (see <see cref="Grid"/>). Ordered by X, then Y.</summary>
/// <param name="X">Grid units to the right.</param>
/// <param name="Y">Grid units to the back.</param>
public readonly record struct GridPoint(int X, int Y) : IComparable<GridPoint>
{
    /// <summary>The grid point nearest to a point given in mm.</summary>
    /// <param name="x">mm, -1024 to 1024.</param>
    /// <param name="y">mm, -1024 to 1024.</param>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate is NaN, infinite or beyond +-1024 mm.</exception>
    public static GridPoint FromMillimetres(double x, double y) =>
        new(Grid.FromMillimetres(x), Grid.FromMillimetres(y));

    /// <summary>X in mm, exactly.</summary>
    public double XMillimetres => Grid.ToMillimetres(X);

    /// <summary>Y in mm, exactly.</summary>
    public double YMillimetres => Grid.ToMillimetres(Y);

    /// <summary>The point moved by a vector given in grid units.</summary>
    /// <param name="dx">Grid units.</param>
    /// <param name="dy">Grid units.</param>
    public GridPoint Offset(int dx, int dy) => new(X + dx, Y + dy);

    /// <inheritdoc/>
    public int CompareTo(GridPoint other) => X != other.X ? X.CompareTo(other.X) : Y.CompareTo(other.Y);

    /// <summary>Whether one point sorts before another.</summary>
    public static bool operator <(GridPoint left, GridPoint right) => left.CompareTo(right) < 0;

    /// <summary>Whether one point sorts after another.</summary>
    public static bool operator >(GridPoint left, GridPoint right) => left.CompareTo(right) > 0;

    /// <summary>Whether one point sorts before another or equals it.</summary>
    public static bool operator <=(GridPoint left, GridPoint right) => left.CompareTo(right) <= 0;

    /// <summary>Whether one point sorts after another or equals it.</summary>
    public static bool operator >=(GridPoint left, GridPoint right) => left.CompareTo(right) >= 0;

    /// <summary>The coordinates in mm, invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"({XMillimetres:0.####}, {YMillimetres:0.####})");
}
