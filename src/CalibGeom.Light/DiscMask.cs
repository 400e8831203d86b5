namespace CalibGeom.Light;

/// <summary>
/// A lit disc, the cross-section of a round column, with its blurred dose. Immutable and safe to share between threads.
/// </summary>
public sealed class DiscMask
{
    private const int Steps = 512;
    private readonly EdgeBlur blur;
    private readonly double radius;

    /// <summary>A lit disc.</summary>
    /// <param name="blur">The blur.</param>
    /// <param name="diameter">The diameter in mm, above 0 and at most 100.</param>
    /// <exception cref="ArgumentException">The diameter is out of its range.</exception>
    public DiscMask(EdgeBlur blur, double diameter)
    {
        ArgumentNullException.ThrowIfNull(blur);
        if (!(diameter > 0 && diameter <= 100))
            throw new ArgumentException(
                FormattableString.Invariant($"The diameter must be above 0 and at most 100 mm, not {diameter}."),
                nameof(diameter)
            );
        this.blur = blur;
        radius = diameter / 2;
    }

    /// <summary>The dose on the axis, as a share of the dose in a wide lit area.</summary>
    public double AxisShare => blur.WithinRadius(radius);

    /// <summary>
    /// The dose at a distance from the axis, as a share of the dose in a wide lit area: with F the weight within a
    /// radius, the integral of F(rho) d(angle) / (2 pi) around the rim as seen from the point (divergence theorem), by
    /// the trapezoid rule, which converges geometrically for a smooth periodic integrand.
    /// </summary>
    /// <param name="distance">The distance from the axis in mm, not negative.</param>
    public double Share(double distance)
    {
        int steps = Steps * Math.Max(1, (int)Math.Ceiling(radius / (16 * blur.Width)));
        double sum = 0;
        for (int i = 0; i < steps; i++)
        {
            double cos = Math.Cos(2 * Math.PI * (i + 0.5) / steps);
            double square = radius * radius + distance * distance - 2 * radius * distance * cos;
            sum += blur.WithinRadius(Math.Sqrt(square)) * radius * (radius - distance * cos) / square;
        }
        return sum / steps;
    }

    /// <summary>The diameter in mm to which a round column prints; null when it does not print at all.</summary>
    /// <param name="ratio">The dose in a wide lit area over the critical dose, above 0.</param>
    public double? PrintedDiameter(double ratio)
    {
        double threshold = 1 / ratio;
        if (AxisShare <= threshold)
            return null;
        double outside = radius + Math.Max(0, blur.EdgeDistance(threshold)) + blur.Width;
        return 2 * Root.Between(r => Share(r) - threshold, 0, outside);
    }
}
