namespace CalibGeom.Verification.Clearances;

/// <summary>
/// When a reading is taken for a slip of the pen and what it then looks like: the one list that predictions and the
/// bench sheet go by. The limits are common practice, no source.
/// </summary>
public static class SlipRules
{
    /// <summary>How far off its nominal a size must be to be set aside, as a share of the nominal.</summary>
    public const double FarShare = 0.2;

    /// <summary>How far off its nominal a size must be as well, mm.</summary>
    public const double FarMm = 0.15;

    /// <summary>
    /// How far off its nominal the thickness of a bridge must be to be set aside, mm: print-through, for which it is
    /// read, makes it thicker by some tenths.
    /// </summary>
    public const double FarBridgeMm = 1;

    /// <summary>
    /// How much thinner than its nominal a bridge must be to be set aside, mm: light makes it no thinner, and reading,
    /// form, caliper and what differs between prints together seldom do by as much (three standard deviations).
    /// </summary>
    public const double ThinBridgeMm = 0.06;

    /// <summary>Whether the thickness of a bridge is none that light makes.</summary>
    /// <param name="off">What was read less the nominal, mm.</param>
    internal static bool IsNoBridge(double off) => off > FarBridgeMm || off < -ThinBridgeMm;

    /// <summary>How near a size must be to that of another feature to be taken for it, as a share.</summary>
    public const double SameTolerance = 0.03;

    /// <summary>The finest step of a display, mm, that is taken to show hundredths and no thousandths.</summary>
    public const double FinestHundredths = 0.0099;

    /// <summary>What a size that is far off looks like; the first that fits holds.</summary>
    public static IReadOnlyList<SlipShape> Shapes { get; } =
    [
        new(1 / 25.4, 0.05, "It looks like inches: write \"in\" in the unit field."),
        new(25.4, 0.05, "It looks like millimetres marked as inches."),
        new(10, 0.05, "It looks like a doubled zero or a lost decimal point."),
        new(100, 0.05, "It looks like a doubled zero or a lost decimal point."),
        new(0.1, 0.05, "It looks like a shifted decimal point."),
        new(0.01, 0.05, "It looks like a shifted decimal point."),
    ];
}
