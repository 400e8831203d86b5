namespace CalibGeom.Light;

/// <summary>
/// How light spreads sideways: a round, symmetric kernel of total weight 1, described by what it makes of a straight
/// edge and of a round disc, and as a sum of Gaussians for rasters. Derive from it for another kernel. Implementations
/// are immutable and safe to share between threads.
/// </summary>
public abstract class EdgeBlur
{
    /// <summary>A blur of a given width.</summary>
    /// <param name="width">The kernel's width in mm, above 0 and at most 1; what it means depends on the
    /// kernel.</param>
    /// <exception cref="ArgumentException">The width is not above 0 or exceeds 1 mm.</exception>
    protected EdgeBlur(double width)
    {
        if (!(width > 0 && width <= 1))
            throw new ArgumentException(
                FormattableString.Invariant($"The blur must be above 0 and at most 1 mm, not {width}."),
                nameof(width)
            );
        Width = width;
    }

    /// <summary>The kernel's width in mm.</summary>
    public double Width { get; }

    /// <summary>
    /// The share of the full dose at a distance from the edge of a lit half-plane: 1 deep inside, 0.5 on the edge, 0
    /// far outside.
    /// </summary>
    /// <param name="outside">The distance from the edge in mm, positive into the dark.</param>
    public abstract double EdgeShare(double outside);

    /// <summary>
    /// The distance from the edge, in mm and positive into the dark, where the dose is a share of the full dose.
    /// </summary>
    /// <param name="share">The share, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is not between 0 and 1.</exception>
    public abstract double EdgeDistance(double share);

    /// <summary>The spread of a thin lit line: density in 1/mm at a distance from it.</summary>
    /// <param name="distance">The distance from the line in mm.</param>
    public abstract double LineDensity(double distance);

    /// <summary>
    /// The share of the kernel's weight within a radius, which is the dose on the axis of a lit disc of that radius.
    /// </summary>
    /// <param name="radius">The radius in mm, not negative.</param>
    public abstract double WithinRadius(double radius);

    /// <summary>
    /// The kernel as a sum of Gaussians, with which a raster of pixels is blurred one axis after the other: the
    /// Gaussian is the only round kernel that allows it, and smooth round kernels are sums of it.
    /// </summary>
    public abstract IReadOnlyList<BlurComponent> Components { get; }

    /// <summary>Throws unless a share lies between 0 and 1.</summary>
    /// <param name="share">The share.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is not between 0 and 1.</exception>
    protected static void RequireShare(double share)
    {
        if (!(share > 0 && share < 1))
            throw new ArgumentOutOfRangeException(nameof(share), share, "The share must be above 0 and below 1.");
    }
}
