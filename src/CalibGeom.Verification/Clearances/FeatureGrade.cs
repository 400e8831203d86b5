namespace CalibGeom.Verification.Clearances;

/// <summary>How a measured gauge face stands to its nominal size. Immutable.</summary>
public sealed record FeatureGrade
{
    /// <summary>The feature.</summary>
    public required FeatureId Feature { get; init; }

    /// <summary>Nominal size, mm.</summary>
    public required double Nominal { get; init; }

    /// <summary>Mean of its readings, mm.</summary>
    public required double Measured { get; init; }

    /// <summary>Expanded uncertainty (95 %) of the mean as a size of the face, mm.</summary>
    public required double Expanded { get; init; }

    /// <summary>The grade; null for what is no gauge face, such as a height, a tunnel or a column.</summary>
    public required ToleranceGrade? Grade { get; init; }

    /// <summary>Measured less nominal, mm.</summary>
    public double Deviation => Measured - Nominal;
}
