namespace CalibGeom.Verification.Tuning;

/// <summary>A clearance to expect at some settings.</summary>
/// <param name="Joint">The joint's id.</param>
/// <param name="Axis"><c>x</c> or <c>y</c>.</param>
/// <param name="Target">Wanted clearance per side, mm.</param>
/// <param name="Clearance">Clearance to expect, mm.</param>
/// <param name="Uncertainty">Its standard uncertainty, mm.</param>
/// <param name="OnTarget">The probability that the process lies within the tolerance of the target.</param>
public sealed record JointChance(
    string Joint,
    string Axis,
    double Target,
    double Clearance,
    double Uncertainty,
    double OnTarget
);
