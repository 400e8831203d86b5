namespace CalibGeom.Verification.Tuning;

/// <summary>What a clearance is likely to be beside its target; the three add up to one.</summary>
/// <param name="OnTarget">Probability of being within the tolerance.</param>
/// <param name="Tight">Probability of being below the target by more than the tolerance.</param>
/// <param name="Loose">Probability of being above the target by more than the tolerance.</param>
public readonly record struct ClearanceChances(double OnTarget, double Tight, double Loose);
