namespace CalibGeom.Verification.Clearances;

/// <summary>X minus Y of scale or growth. Immutable.</summary>
/// <param name="Difference">The difference.</param>
/// <param name="Probability">Two-sided probability of a difference as large by chance.</param>
public sealed record AxisDifference(Estimate Difference, double Probability);
