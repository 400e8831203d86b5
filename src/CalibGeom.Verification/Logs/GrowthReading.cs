namespace CalibGeom.Verification.Logs;

/// <summary>The growth per edge that one print showed along one axis. Immutable.</summary>
public sealed record GrowthReading
{
    /// <summary>A growth.</summary>
    /// <param name="value">Growth per edge in mm, -2 to 2, positive = solids grew.</param>
    /// <param name="uncertainty">Its standard uncertainty from reading and form, without the instrument's bias, mm,
    /// above 0 and at most 1.</param>
    /// <param name="bias">The standard uncertainty from the instrument's bias, which all prints measured with it share,
    /// mm, 0 to 1. Default 0.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public GrowthReading(double value, double uncertainty, double bias = 0)
    {
        Value = Require.Within(value, -2, 2, "growth", "mm", nameof(value));
        Uncertainty = Require.Positive(uncertainty, 1, "uncertainty of the growth", "mm", nameof(uncertainty));
        Bias = Require.Within(bias, 0, 1, "bias of the growth", "mm", nameof(bias));
    }

    /// <summary>Growth per edge in mm, positive = solids grew.</summary>
    public double Value { get; }

    /// <summary>Its standard uncertainty without the instrument's bias, mm.</summary>
    public double Uncertainty { get; }

    /// <summary>The standard uncertainty from the instrument's bias, mm.</summary>
    public double Bias { get; }
}
