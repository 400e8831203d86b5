namespace CalibGeom.Planar;

public sealed partial class Outline
{
    /// <summary>The largest distance, in mm, between a circle's polygon and its arc: 0.002.</summary>
    public const double ChordTolerance = 0.002;

    /// <summary>An axis-parallel rectangle.</summary>
    /// <param name="x0">Left, mm.</param>
    /// <param name="y0">Front, mm.</param>
    /// <param name="x1">Right, mm; more than <paramref name="x0"/>.</param>
    /// <param name="y1">Back, mm; more than <paramref name="y0"/>.</param>
    /// <exception cref="ArgumentException">The rectangle has no area.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate is NaN, infinite or beyond +-1024 mm.</exception>
    public static Outline Rectangle(double x0, double y0, double x1, double y1) =>
        FromMillimetres((x0, y0), (x1, y0), (x1, y1), (x0, y1));

    /// <summary>
    /// A circle as the regular polygon of equal area, every vertex on the grid; the number of segments is a multiple of
    /// four, large enough that no chord is further than <see cref="ChordTolerance"/> from the arc.
    /// </summary>
    /// <param name="x">Centre, mm.</param>
    /// <param name="y">Centre, mm.</param>
    /// <param name="diameter">mm, above 0.</param>
    /// <param name="segments">The number of vertices, a multiple of four; 0 (default) takes
    /// <see cref="CircleSegments"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not above 0, the segments are not a multiple of
    /// four, or a vertex leaves the grid.</exception>
    public static Outline Circle(double x, double y, double diameter, int segments = 0)
    {
        if (!(diameter > 0))
            throw new ArgumentOutOfRangeException(nameof(diameter), diameter, "A diameter must be above 0 mm.");
        if (segments == 0)
            segments = CircleSegments(diameter);
        if (segments < 4 || segments % 4 != 0)
            throw new ArgumentOutOfRangeException(
                nameof(segments),
                segments,
                "A circle's segments must be a positive multiple of 4."
            );
        double step = 2 * Math.PI / segments;
        double radius = diameter / 2 * Math.Sqrt(step / Math.Sin(step));
        GridPoint centre = GridPoint.FromMillimetres(x, y);
        return new Outline(
            Enumerable
                .Range(0, segments)
                .Select(i =>
                    centre.Offset(
                        Grid.FromMillimetres(radius * Math.Cos((i + 0.5) * step)),
                        Grid.FromMillimetres(radius * Math.Sin((i + 0.5) * step))
                    )
                )
        );
    }

    /// <summary>
    /// The number of segments that <see cref="Circle"/> takes for a diameter: the fewest, in multiples of four, with
    /// the sagitta r (1 - cos(pi / n)) at most <see cref="ChordTolerance"/>.
    /// </summary>
    /// <param name="diameter">mm, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not above 0.</exception>
    public static int CircleSegments(double diameter)
    {
        if (!(diameter > 0))
            throw new ArgumentOutOfRangeException(nameof(diameter), diameter, "A diameter must be above 0 mm.");
        double halfAngle = Math.Acos(Math.Max(0, 1 - ChordTolerance / (diameter / 2)));
        return Math.Max(8, 4 * (int)Math.Ceiling(Math.PI / halfAngle / 4));
    }
}
