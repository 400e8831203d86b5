namespace CalibGeom.Verification.Uncertainty;

/// <summary>One line of an uncertainty budget. Immutable.</summary>
public sealed record BudgetComponent
{
    /// <summary>What contributes.</summary>
    public required string Name { get; init; }

    /// <summary>The estimate of the input; 0 for a correction that is taken as zero.</summary>
    public required double Value { get; init; }

    /// <summary>Standard uncertainty of the input, in its own unit.</summary>
    public required double StandardUncertainty { get; init; }

    /// <summary>Type A or B.</summary>
    public required Evaluation Evaluation { get; init; }

    /// <summary>The distribution.</summary>
    public required InputShape Shape { get; init; }

    /// <summary>Degrees of freedom of the standard uncertainty.</summary>
    public required double DegreesOfFreedom { get; init; }

    /// <summary>Change of the result per unit of the input.</summary>
    public required double Sensitivity { get; init; }

    /// <summary>Share of the result's variance, 0 to 1; with correlated inputs a share may be negative.</summary>
    public required double Share { get; init; }

    /// <summary>The contribution to the result's standard uncertainty, |sensitivity| times uncertainty.</summary>
    public double Contribution => Math.Abs(Sensitivity) * StandardUncertainty;
}
