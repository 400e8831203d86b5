namespace CalibGeom.Light;

/// <summary>
/// A Gaussian blur exp(-r^2 / (2 sigma^2)); a radius W0 at which a beam falls to exp(-2) is 2 sigma. Immutable.
/// </summary>
public sealed class GaussianBlur : EdgeBlur
{
    /// <summary>A Gaussian blur.</summary>
    /// <param name="sigma">The standard deviation in mm, above 0 and at most 1.</param>
    /// <exception cref="ArgumentException">The width is not above 0 or exceeds 1 mm.</exception>
    public GaussianBlur(double sigma)
        : base(sigma)
    {
        Components = [new BlurComponent(1, sigma)];
    }

    /// <inheritdoc/>
    public override IReadOnlyList<BlurComponent> Components { get; }

    /// <inheritdoc/>
    public override double EdgeShare(double outside) => NormalLaw.Cumulative(-outside / Width);

    /// <inheritdoc/>
    public override double EdgeDistance(double share)
    {
        RequireShare(share);
        return -Width * NormalLaw.Quantile(share);
    }

    /// <inheritdoc/>
    public override double LineDensity(double distance) => NormalLaw.Density(distance / Width) / Width;

    /// <inheritdoc/>
    public override double WithinRadius(double radius) => 1 - Math.Exp(-radius * radius / (2 * Width * Width));
}
