namespace CalibGeom.Dose;

/// <summary>
/// A heavy-tailed blur, gamma / (2 pi (r^2 + gamma^2)^(3/2)): the round kernel whose spread of a line is a Lorentz (Cauchy) curve.
/// </summary>
public sealed class LorentzBlur : EdgeBlur
{
    /// <summary>A Lorentz blur.</summary>
    /// <param name="gamma">The half width at half maximum of a line's spread in mm, above 0 and at most 1.</param>
    /// <exception cref="ArgumentException">The width is not above 0 or exceeds 1 mm.</exception>
    public LorentzBlur(double gamma)
        : base(gamma)
    {
    }

    /// <inheritdoc/>
    public override double EdgeShare(double outside) => 0.5 - Math.Atan(outside / Width) / Math.PI;

    /// <inheritdoc/>
    public override double EdgeDistance(double share)
    {
        CheckShare(share);
        return Width * Math.Tan(Math.PI * (0.5 - share));
    }

    /// <inheritdoc/>
    public override double LineDensity(double distance) => Width / (Math.PI * (distance * distance + Width * Width));

    /// <inheritdoc/>
    public override double WithinRadius(double radius) => 1 - Width / Math.Sqrt(Width * Width + radius * radius);
}
