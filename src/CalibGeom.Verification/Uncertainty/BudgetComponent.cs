namespace CalibGeom.Verification.Uncertainty;

/// <summary>One line of an uncertainty budget. Immutable.</summary>
/// <param name="Name">What contributes.</param>
/// <param name="Value">The estimate of the input; 0 for a correction that is taken as zero.</param>
/// <param name="StandardUncertainty">Standard uncertainty of the input, in its own unit.</param>
/// <param name="Evaluation">Type A or B.</param>
/// <param name="Shape">The distribution.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the standard uncertainty.</param>
/// <param name="Sensitivity">Change of the result per unit of the input.</param>
/// <param name="Share">Share of the result's variance, 0 to 1; with correlated inputs a share may be negative.</param>
public sealed record BudgetComponent(
    string Name,
    double Value,
    double StandardUncertainty,
    Evaluation Evaluation,
    InputShape Shape,
    double DegreesOfFreedom,
    double Sensitivity,
    double Share
)
{
    /// <summary>The contribution to the result's standard uncertainty, |sensitivity| times uncertainty.</summary>
    public double Contribution => Math.Abs(Sensitivity) * StandardUncertainty;
}
