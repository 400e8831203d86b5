namespace CalibGeom.Light;

/// <summary>
/// A heavy-tailed blur, gamma / (2 pi (r^2 + gamma^2)^(3/2)): the round kernel whose spread of a line is a Lorentz
/// (Cauchy) curve. Immutable.
/// </summary>
public sealed class LorentzBlur : EdgeBlur
{
    /// <summary>A Lorentz blur.</summary>
    /// <param name="gamma">The half width at half maximum of a line's spread in mm, above 0 and at most 1.</param>
    /// <exception cref="ArgumentException">The width is not above 0 or exceeds 1 mm.</exception>
    public LorentzBlur(double gamma)
        : base(gamma)
    {
        Components = Mixture(gamma);
    }

    /// <summary>
    /// Eight Gaussians from gamma / 4 to 32 gamma, each twice as wide as the one before. Exactly, the kernel is a
    /// mixture of Gaussians whose gamma / sigma is distributed as the size of a standard normal value (Student's t with
    /// one degree of freedom); the sum is its trapezoid rule over ln(sigma), and the 2.5 % of the light that lie beyond
    /// go to the widest one.
    /// </summary>
    public override IReadOnlyList<BlurComponent> Components { get; }

    /// <inheritdoc/>
    public override double EdgeShare(double outside) => 0.5 - Math.Atan(outside / Width) / Math.PI;

    /// <inheritdoc/>
    public override double EdgeDistance(double share)
    {
        RequireShare(share);
        return Width * Math.Tan(Math.PI * (0.5 - share));
    }

    /// <inheritdoc/>
    public override double LineDensity(double distance) => Width / (Math.PI * (distance * distance + Width * Width));

    /// <inheritdoc/>
    public override double WithinRadius(double radius) => 1 - Width / Math.Sqrt(Width * Width + radius * radius);

    private static BlurComponent[] Mixture(double gamma)
    {
        var parts = new BlurComponent[8];
        double rest = 1;
        for (int i = 0; i < parts.Length; i++)
        {
            double ratio = Math.ScaleB(1, 2 - i),
                weight = i == parts.Length - 1 ? rest : 2 * NormalLaw.Density(ratio) * ratio * Math.Log(2);
            parts[i] = new BlurComponent(weight, gamma / ratio);
            rest -= weight;
        }
        return parts;
    }
}
