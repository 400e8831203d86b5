namespace CalibGeom.Verification.Clearances;

/// <summary>How a measured feature stands to its nominal size.</summary>
/// <param name="Feature">The feature.</param>
/// <param name="Nominal">Nominal size, mm.</param>
/// <param name="Measured">Mean of its readings, mm.</param>
/// <param name="Grade">Smallest ISO 286 grade with |deviation| at most half its tolerance; null when none up to IT16 or
/// above 120 mm.</param>
public sealed record FeatureGrade(string Feature, double Nominal, double Measured, int? Grade)
{
    /// <summary>Measured less nominal, mm.</summary>
    public double Deviation => Measured - Nominal;
}
