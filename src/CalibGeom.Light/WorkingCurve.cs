namespace CalibGeom.Light;

/// <summary>
/// How deep a dose cures: Cd = Dp ln(E / Ec). Source: Gibson, Rosen, Stucker, Additive Manufacturing Technologies, 2nd
/// ed. (2015), equations 4.23 and 4.28. Values for a resin differ widely between instruments (Kolibaba et al., Addit.
/// Manuf. 84 (2024) 104082: Dp by 7 times, Ec by 70 times), so they belong to one printer. Immutable.
/// </summary>
public sealed record WorkingCurve
{
    /// <summary>A working curve.</summary>
    /// <param name="penetrationDepth">Dp in mm, above 0 and at most 10: the depth over which light falls to
    /// 1/e.</param>
    /// <param name="criticalDose">Ec in mJ/cm2, above 0 and at most 10000: the dose at which resin just becomes
    /// solid.</param>
    /// <exception cref="ArgumentException">A value is out of its range.</exception>
    public WorkingCurve(double penetrationDepth, double criticalDose)
    {
        if (!(penetrationDepth > 0 && penetrationDepth <= 10))
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"The penetration depth must be above 0 and at most 10 mm, not {penetrationDepth}."
                ),
                nameof(penetrationDepth)
            );
        if (!(criticalDose > 0 && criticalDose <= 10000))
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"The critical dose must be above 0 and at most 10000 mJ/cm2, not {criticalDose}."
                ),
                nameof(criticalDose)
            );
        PenetrationDepth = penetrationDepth;
        CriticalDose = criticalDose;
    }

    /// <summary>Dp in mm.</summary>
    public double PenetrationDepth { get; }

    /// <summary>Ec in mJ/cm2.</summary>
    public double CriticalDose { get; }

    /// <summary>The working curve through two measured points.</summary>
    /// <param name="lowDose">The lower dose in mJ/cm2, above 0.</param>
    /// <param name="lowDepth">The depth it cured in mm.</param>
    /// <param name="highDose">The higher dose in mJ/cm2.</param>
    /// <param name="highDepth">The depth it cured in mm.</param>
    /// <exception cref="ArgumentException">The higher dose is not higher, or did not cure deeper.</exception>
    public static WorkingCurve Through(double lowDose, double lowDepth, double highDose, double highDepth)
    {
        if (!(lowDose > 0 && highDose > lowDose))
            throw new ArgumentException(
                FormattableString.Invariant($"The doses must rise from above 0, not {lowDose} to {highDose} mJ/cm2."),
                nameof(highDose)
            );
        if (!(highDepth > lowDepth))
            throw new ArgumentException(
                FormattableString.Invariant($"The higher dose must cure deeper than {lowDepth} mm, not {highDepth}."),
                nameof(highDepth)
            );
        double depth = (highDepth - lowDepth) / Math.Log(highDose / lowDose);
        return new WorkingCurve(depth, lowDose * Math.Exp(-lowDepth / depth));
    }

    /// <summary>The depth in mm to which a dose cures; negative when the dose cures nothing.</summary>
    /// <param name="dose">The dose at the surface in mJ/cm2, above 0.</param>
    public double Depth(double dose) => PenetrationDepth * Math.Log(dose / CriticalDose);

    /// <summary>The dose in mJ/cm2 at the surface that cures to a depth.</summary>
    /// <param name="depth">The depth in mm.</param>
    public double DoseFor(double depth) => CriticalDose * Math.Exp(depth / PenetrationDepth);
}
