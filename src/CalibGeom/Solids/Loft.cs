using System.Globalization;
using CalibGeom.Planar;

namespace CalibGeom.Solids;

/// <summary>
/// A body between two level regions with the same rings and vertex counts: ring by ring and vertex by vertex, ruled
/// walls run from the bottom to the top. Each wall is two triangles split from the bottom's first vertex to the top's
/// second. A straight wall, a chamfer or taper, a leaning column and a lead-in are all lofts. Immutable and safe to
/// share between threads.
/// </summary>
public sealed class Loft
{
    /// <summary>A loft.</summary>
    /// <param name="bottom">The region at the lower end.</param>
    /// <param name="bottomZ">Height of the lower end, mm; snapped to the grid.</param>
    /// <param name="top">The region at the upper end: as many holes as <paramref name="bottom"/>, and ring by ring as
    /// many vertices.</param>
    /// <param name="topZ">Height of the upper end, mm; above <paramref name="bottomZ"/> by at least a grid
    /// unit.</param>
    /// <exception cref="ArgumentException">Rings or vertex counts differ, or the height is not above zero.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A height is NaN, infinite or beyond +-1024 mm.</exception>
    public Loft(Region bottom, double bottomZ, Region top, double topZ)
        : this(bottom, Grid.FromMillimetres(bottomZ), top, Grid.FromMillimetres(topZ), null) { }

    private Loft(Region bottom, int bottomLevel, Region top, int topLevel, ObliquePlane? underside)
    {
        ArgumentNullException.ThrowIfNull(bottom);
        ArgumentNullException.ThrowIfNull(top);
        RequireSameRings(bottom, top);
        if (topLevel <= bottomLevel)
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"A loft needs its top above its bottom; bottom {Grid.ToMillimetres(bottomLevel)} mm, top "
                        + $"{Grid.ToMillimetres(topLevel)} mm."
                ),
                nameof(topLevel)
            );
        Bottom = bottom;
        Top = top;
        BottomLevel = bottomLevel;
        TopLevel = topLevel;
        Underside = underside;
    }

    /// <summary>A straight-walled loft.</summary>
    /// <param name="section">The region at both ends.</param>
    /// <param name="bottomZ">Height of the lower end, mm.</param>
    /// <param name="topZ">Height of the upper end, mm.</param>
    /// <exception cref="ArgumentException">The height is not above zero.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A height is NaN, infinite or beyond +-1024 mm.</exception>
    public static Loft Prism(Region section, double bottomZ, double topZ) => new(section, bottomZ, section, topZ);

    /// <summary>
    /// A straight-walled loft with a level top and an oblique underside on the plane z = z0 + slopeX x + slopeY y. The
    /// underside must stay free: nothing may stand below or beside it within its height.
    /// </summary>
    /// <param name="section">The region, seen from above.</param>
    /// <param name="z0">Height of the underside's plane at x = y = 0, mm.</param>
    /// <param name="slopeX">Rise of the underside per mm of x.</param>
    /// <param name="slopeY">Rise of the underside per mm of y.</param>
    /// <param name="topZ">Height of the level top, mm.</param>
    /// <exception cref="ArgumentException">The underside reaches the top somewhere.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A height is NaN, infinite or beyond +-1024 mm.</exception>
    public static Loft Wedge(Region section, double z0, double slopeX, double slopeY, double topZ)
    {
        ArgumentNullException.ThrowIfNull(section);
        var plane = new ObliquePlane(z0, slopeX, slopeY);
        int highest = section.Rings.SelectMany(r => r.Points.ToArray()).Max(plane.LevelAt);
        int lowest = section.Rings.SelectMany(r => r.Points.ToArray()).Min(plane.LevelAt);
        int top = Grid.FromMillimetres(topZ);
        if (highest >= top)
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"The wedge's underside reaches {Grid.ToMillimetres(highest)} mm, not below its top at {topZ} mm."
                ),
                nameof(z0)
            );
        return new Loft(section, lowest, section, top, plane);
    }

    /// <summary>The region at the lower end.</summary>
    public Region Bottom { get; }

    /// <summary>The region at the upper end.</summary>
    public Region Top { get; }

    /// <summary>Height of the lower end in grid units; the lowest point of an oblique underside.</summary>
    public int BottomLevel { get; }

    /// <summary>Height of the upper end in grid units.</summary>
    public int TopLevel { get; }

    /// <summary>Height of the lower end in mm; the lowest point of an oblique underside.</summary>
    public double BottomZ => Grid.ToMillimetres(BottomLevel);

    /// <summary>Height of the upper end in mm.</summary>
    public double TopZ => Grid.ToMillimetres(TopLevel);

    /// <summary>The volume in mm3, exact for the walls as they are split.</summary>
    public double Volume => LoftVolume.Of(this);

    /// <summary>The plane of an oblique underside, or null for a level one.</summary>
    internal ObliquePlane? Underside { get; }

    private static void RequireSameRings(Region bottom, Region top)
    {
        if (bottom.Holes.Count != top.Holes.Count)
            throw new ArgumentException(
                $"A loft's ends need as many holes; bottom has {bottom.Holes.Count}, top {top.Holes.Count}.",
                nameof(top)
            );
        foreach (
            (Outline b, Outline t, int ring) in bottom.Rings.Zip(top.Rings, Enumerable.Range(0, bottom.Holes.Count + 1))
        )
            if (b.Count != t.Count)
                throw new ArgumentException(
                    $"A loft's ends need equal vertex counts; ring {ring} has {b.Count} at the bottom, "
                        + $"{t.Count} at the top.",
                    nameof(top)
                );
    }
}
