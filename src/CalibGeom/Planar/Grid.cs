namespace CalibGeom.Planar;

/// <summary>
/// The integer grid on which all solids of this library live: one unit is 2^-13 mm (about 0.122 micrometre). Every grid
/// value from -1024 mm to +1024 mm is exactly representable as a 32-bit float, so a binary STL holds precisely the
/// solid in memory.
/// </summary>
public static class Grid
{
    /// <summary>Grid units in one millimetre: 8192.</summary>
    public const int UnitsPerMillimetre = 8192;

    /// <summary>The largest coordinate, in millimetres, that a grid value may have (inclusive, either sign).</summary>
    public const double LimitMillimetres = 1024;

    /// <summary>The largest coordinate, in grid units, that a grid value may have (inclusive, either sign).</summary>
    public const int LimitUnits = 1024 * UnitsPerMillimetre;

    /// <summary>The nearest grid value to a length; halves round away from zero.</summary>
    /// <param name="millimetres">A finite length in mm, -1024 to 1024 inclusive.</param>
    /// <returns>Grid units.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is NaN, infinite or beyond +-1024 mm.</exception>
    public static int FromMillimetres(double millimetres)
    {
        if (!double.IsFinite(millimetres) || Math.Abs(millimetres) > LimitMillimetres)
            throw new ArgumentOutOfRangeException(
                nameof(millimetres),
                millimetres,
                "A coordinate must be a number from -1024 to 1024 mm."
            );
        return (int)Math.Round(millimetres * UnitsPerMillimetre, MidpointRounding.AwayFromZero);
    }

    /// <summary>The exact length, in mm, of a number of grid units.</summary>
    /// <param name="units">Grid units.</param>
    public static double ToMillimetres(long units) => units / (double)UnitsPerMillimetre;

    /// <summary>A length in mm moved to the nearest grid value.</summary>
    /// <param name="millimetres">A finite length in mm, -1024 to 1024 inclusive.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is NaN, infinite or beyond +-1024 mm.</exception>
    public static double Snap(double millimetres) => ToMillimetres(FromMillimetres(millimetres));
}
