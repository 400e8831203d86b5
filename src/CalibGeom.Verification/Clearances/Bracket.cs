namespace CalibGeom.Verification.Clearances;

/// <summary>A length known only to lie between two limits; its uncertainty is that of a rectangle. Immutable.</summary>
/// <param name="Low">The lower limit, mm.</param>
/// <param name="High">The upper limit, mm; infinite when nothing bounds it.</param>
public sealed record Bracket(double Low, double High)
{
    /// <summary>The middle, mm; the lower limit when there is no upper one.</summary>
    public double Value => double.IsFinite(High) ? (Low + High) / 2 : Low;

    /// <summary>Standard uncertainty, mm: half the width over the root of three.</summary>
    public double StandardUncertainty => (High - Low) / Math.Sqrt(12);
}
