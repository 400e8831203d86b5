namespace CalibGeom.Verification.Tuning;

/// <summary>
/// A working curve from a data sheet with the irradiance of the printer: a start, never a setting. 24 laboratories
/// measured one resin and got Dp apart by up to 7 times and Ec by up to 70 (Kolibaba et al., Additive Manufacturing 84
/// (2024) 104082); a range of 24 values is some four standard deviations wide. Immutable.
/// </summary>
public sealed record QuotedLight
{
    /// <summary>Standard deviation of ln Dp between laboratories: ln 7 / 4.</summary>
    public const double DepthDeviation = 0.49;

    /// <summary>Standard deviation of ln Ec between laboratories: ln 70 / 4.</summary>
    public const double DoseDeviation = 1.06;

    /// <summary>A quoted curve.</summary>
    /// <param name="penetrationDepth">Dp in mm, above 0 and at most 10.</param>
    /// <param name="criticalDose">Ec in mJ/cm2, above 0 and at most 10000.</param>
    /// <param name="irradiance">Irradiance at the film in mW/cm2, above 0 and at most 1000.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public QuotedLight(double penetrationDepth, double criticalDose, double irradiance)
    {
        PenetrationDepth = Require.Positive(penetrationDepth, 10, "penetration depth", "mm", nameof(penetrationDepth));
        CriticalDose = Require.Positive(criticalDose, 10000, "critical dose", "mJ/cm2", nameof(criticalDose));
        Irradiance = Require.Positive(irradiance, 1000, "irradiance", "mW/cm2", nameof(irradiance));
    }

    /// <summary>Dp, mm.</summary>
    public double PenetrationDepth { get; }

    /// <summary>Ec, mJ/cm2.</summary>
    public double CriticalDose { get; }

    /// <summary>Irradiance at the film, mW/cm2.</summary>
    public double Irradiance { get; }

    /// <summary>The exposure that cures to a depth by these numbers, s.</summary>
    /// <param name="depth">The depth in mm.</param>
    public double TimeFor(double depth) => CriticalDose * Math.Exp(depth / PenetrationDepth) / Irradiance;
}
