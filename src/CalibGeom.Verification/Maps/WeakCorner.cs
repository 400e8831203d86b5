using CalibGeom.Verification.Trends;

namespace CalibGeom.Verification.Maps;

/// <summary>Where the light is weakest. Immutable.</summary>
/// <param name="X">X of the corner of the plate, mm.</param>
/// <param name="Y">Y of the corner, mm.</param>
/// <param name="Probability">That no other corner is weaker.</param>
/// <param name="Lacks">What it lacks against the strongest place of the plate, as a share 0 to 1.</param>
public sealed record WeakCorner(double X, double Y, double Probability, Amount Lacks);
