namespace CalibGeom.Planar;

/// <summary>A point or vector of a plane, mm; in drawings pixels.</summary>
/// <param name="X">mm along the plane's first axis.</param>
/// <param name="Y">mm along the plane's second axis.</param>
public readonly record struct Vector2D(double X, double Y)
{
    /// <summary>Two numbers in brackets are a point, so that outlines can be written out.</summary>
    /// <param name="point">x and y, mm.</param>
    public static implicit operator Vector2D((double X, double Y) point) => new(point.X, point.Y);

    /// <summary>Sum of two vectors.</summary>
    public static Vector2D operator +(Vector2D a, Vector2D b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>Difference of two vectors.</summary>
    public static Vector2D operator -(Vector2D a, Vector2D b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>
    /// The z component of the vector product: positive when <paramref name="b"/> lies to the left of
    /// <paramref name="a"/>.
    /// </summary>
    public static double Cross(Vector2D a, Vector2D b) => a.X * b.Y - a.Y * b.X;

    /// <summary>The area inside a closed ring, mm2: positive when it runs counter-clockwise.</summary>
    /// <param name="ring">The vertices; the last joins the first.</param>
    public static double SignedArea(ReadOnlySpan<Vector2D> ring)
    {
        if (ring.Length < 3)
            return 0;
        double sum = 0;
        Vector2D origin = ring[0];
        for (int i = 2; i < ring.Length; i++)
            sum += Cross(ring[i - 1] - origin, ring[i] - origin);
        return sum / 2;
    }
}
