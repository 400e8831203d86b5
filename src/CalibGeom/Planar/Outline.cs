namespace CalibGeom.Planar;

/// <summary>
/// A simple closed polygon on the grid: at least three vertices, no two edges that touch except neighbours at their
/// shared vertex, area not zero. Vertices run counter-clockwise; an outline given clockwise is turned round and keeps
/// its first vertex. Immutable and safe to share between threads.
/// </summary>
public sealed partial class Outline
{
    private readonly GridPoint[] points;

    /// <summary>An outline through grid points, in order; the last joins the first.</summary>
    /// <param name="points">At least three vertices, within +-1024 mm; do not repeat the first at the end.</param>
    /// <exception cref="ArgumentException">Fewer than three vertices, a repeated vertex, a coordinate out of range,
    /// edges that touch or cross, or no area; the message names the place.</exception>
    public Outline(IEnumerable<GridPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        this.points = points.ToArray();
        OutlineCheck.Validate(this.points);
        DoubledArea = SignedDoubledArea(this.points);
        if (DoubledArea < 0)
        {
            Array.Reverse(this.points, 1, this.points.Length - 1);
            DoubledArea = -DoubledArea;
        }
    }

    private Outline(GridPoint[] trusted, long doubledArea)
    {
        points = trusted;
        DoubledArea = doubledArea;
    }

    /// <summary>An outline through points in mm, each moved to the nearest grid point.</summary>
    /// <param name="points">At least three vertices in mm.</param>
    /// <exception cref="ArgumentException">As for the constructor.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate is NaN, infinite or beyond +-1024 mm.</exception>
    public static Outline FromMillimetres(params IEnumerable<Vector2D> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        return new Outline(points.Select(p => GridPoint.FromMillimetres(p.X, p.Y)));
    }

    /// <summary>The vertices, counter-clockwise.</summary>
    public ReadOnlySpan<GridPoint> Points => points;

    /// <summary>The number of vertices.</summary>
    public int Count => points.Length;

    /// <summary>Twice the area, in square grid units, exactly.</summary>
    public long DoubledArea { get; }

    /// <summary>The area in mm2.</summary>
    public double Area => DoubledArea / (2.0 * Grid.UnitsPerMillimetre * Grid.UnitsPerMillimetre);

    /// <summary>The outline moved by a vector in mm (snapped to the grid, so the shape is unchanged).</summary>
    /// <param name="dx">mm.</param>
    /// <param name="dy">mm.</param>
    /// <exception cref="ArgumentOutOfRangeException">A vertex would leave the range of the grid.</exception>
    public Outline Translate(double dx, double dy)
    {
        int x = Grid.FromMillimetres(dx),
            y = Grid.FromMillimetres(dy);
        var moved = Array.ConvertAll(points, p => p.Offset(x, y));
        OutlineCheck.RequireRange(moved);
        return new Outline(moved, DoubledArea);
    }

    /// <summary>Whether a point lies inside (1), on the border (0) or outside (-1).</summary>
    /// <param name="point">A grid point.</param>
    public int Locate(GridPoint point)
    {
        bool inside = false;
        for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
        {
            GridPoint a = points[j],
                b = points[i];
            if (Predicates.OnSegment(a, b, point))
                return 0;
            if ((a.Y > point.Y) == (b.Y > point.Y))
                continue;
            bool left = Predicates.Cross(a, b, point) > 0;
            if (left == (b.Y > a.Y))
                inside = !inside;
        }
        return inside ? 1 : -1;
    }

    /// <summary>Twice the signed area of a ring: positive when it runs counter-clockwise.</summary>
    internal static long SignedDoubledArea(GridPoint[] ring)
    {
        long sum = 0;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
            sum += (long)ring[j].X * ring[i].Y - (long)ring[j].Y * ring[i].X;
        return sum;
    }
}
