namespace CalibGeom.Planar;

/// <summary>
/// A connected area of the plane: one outer outline and any number of holes that lie inside it and touch neither it nor
/// each other. Immutable and safe to share between threads.
/// </summary>
public sealed class Region
{
    private readonly Outline[] holes;

    /// <summary>A region.</summary>
    /// <param name="outer">The outer border.</param>
    /// <param name="holes">The borders of the holes; none by default.</param>
    /// <exception cref="ArgumentException">A hole lies outside, or touches the outer border or another
    /// hole.</exception>
    public Region(Outline outer, params IEnumerable<Outline> holes)
    {
        ArgumentNullException.ThrowIfNull(outer);
        ArgumentNullException.ThrowIfNull(holes);
        Outer = outer;
        this.holes = holes.ToArray();
        RegionCheck.Validate(outer, this.holes);
    }

    /// <summary>The outer border.</summary>
    public Outline Outer { get; }

    /// <summary>The borders of the holes (each counter-clockwise like every outline).</summary>
    public IReadOnlyList<Outline> Holes => holes;

    /// <summary>All borders: the outer first, then the holes in order.</summary>
    public IEnumerable<Outline> Rings => holes.Prepend(Outer);

    /// <summary>The area in mm2.</summary>
    public double Area => Outer.Area - holes.Sum(h => h.Area);

    /// <summary>The region moved by a vector in mm (snapped to the grid, so the shape is unchanged).</summary>
    /// <param name="dx">mm.</param>
    /// <param name="dy">mm.</param>
    /// <exception cref="ArgumentOutOfRangeException">A vertex would leave the range of the grid.</exception>
    public Region Translate(double dx, double dy) =>
        new(Outer.Translate(dx, dy), holes.Select(h => h.Translate(dx, dy)));

    /// <summary>
    /// The union of outlines that may overlap, such as the strokes of a letter, as regions that do not. Crossings are
    /// rounded to the grid; vertices on straight runs are dropped.
    /// </summary>
    /// <param name="outlines">Any number of outlines.</param>
    /// <returns>The regions, in order of their lowest vertex; empty when there are no outlines.</returns>
    /// <exception cref="ArgumentException">The borders of the union touch themselves in a point.</exception>
    public static IReadOnlyList<Region> Union(params IEnumerable<Outline> outlines)
    {
        ArgumentNullException.ThrowIfNull(outlines);
        return RegionUnion.Of([.. outlines]);
    }

    /// <summary>Whether a point lies inside (1), on a border (0) or outside (-1).</summary>
    /// <param name="point">A grid point.</param>
    public int Locate(GridPoint point)
    {
        int place = Outer.Locate(point);
        foreach (Outline hole in holes)
        {
            if (place <= 0)
                break;
            place = -hole.Locate(point);
        }
        return place;
    }

    /// <summary>A region without holes.</summary>
    /// <param name="outer">The border.</param>
    public static implicit operator Region(Outline outer) => new(outer);
}
