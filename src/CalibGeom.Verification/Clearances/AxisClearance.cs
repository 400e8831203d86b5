using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>The clearance of one joint along one axis, mm per side.</summary>
/// <param name="Joint">The joint's number.</param>
/// <param name="Axis"><c>x</c> or <c>y</c>.</param>
/// <param name="Design">The designed clearance.</param>
/// <param name="Clearance">The best estimate from everything that was read and felt.</param>
/// <param name="Direct">From the two faces alone, when both were read.</param>
/// <param name="Model">From scale and growth.</param>
/// <param name="Agreement">Two-sided probability that direct and model differ as much by chance; null without a direct
/// value.</param>
/// <param name="Budget">What the uncertainty of the best estimate is made of, before felt fits.</param>
public sealed record AxisClearance(
    int Joint,
    string Axis,
    double Design,
    Estimate Clearance,
    Estimate? Direct,
    Estimate Model,
    double? Agreement,
    UncertaintyBudget Budget
)
{
    /// <summary>Estimate less design, mm.</summary>
    public double Deviation => Clearance.Value - Design;
}
