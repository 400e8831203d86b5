namespace CalibGeom.Verification.Trends;

/// <summary>What of the light to take back by the exposure. Immutable.</summary>
/// <param name="LogLight">The change of ln(light) to take back; negative = less light.</param>
/// <param name="Probability">That clearance then is within the tolerance of the baseline again (where no growth was
/// read: that light is), if what changed is light.</param>
public sealed record DoseLost(double LogLight, double Probability);
