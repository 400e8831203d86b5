using CalibGeom.Verification.Trends;

namespace CalibGeom.Verification.Maps;

/// <summary>A place at which the light may be weakest. Immutable.</summary>
/// <param name="X">X of a corner of the plate, or 0 for its middle, mm.</param>
/// <param name="Y">Its Y, mm.</param>
/// <param name="Probability">That neither another corner nor the middle is weaker, 0 to 1.</param>
/// <param name="Lacks">What it lacks against the strongest place of the plate, as a share 0 to 1.</param>
public sealed record WeakPlace(double X, double Y, double Probability, Amount Lacks);
