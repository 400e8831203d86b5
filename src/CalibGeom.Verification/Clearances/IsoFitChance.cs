namespace CalibGeom.Verification.Clearances;

/// <summary>How probable it is that a joint lies within an ISO 286 fit. Immutable.</summary>
/// <param name="Fit">Such as <c>H7/g6</c>.</param>
/// <param name="Probability">The probability.</param>
public sealed record IsoFitChance(string Fit, double Probability);
