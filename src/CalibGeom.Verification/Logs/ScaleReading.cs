namespace CalibGeom.Verification.Logs;

/// <summary>The proportional change of all sizes that one print showed along one axis. Immutable.</summary>
public sealed record ScaleReading
{
    /// <summary>A scale.</summary>
    /// <param name="value">s, with what was typed in the slicer: -0.002 is 0.2 % too small; -0.2 to 0.2.</param>
    /// <param name="uncertainty">Its standard uncertainty, instruments included, above 0 and at most 0.2.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public ScaleReading(double value, double uncertainty)
    {
        Value = Require.Within(value, -0.2, 0.2, "scale", "", nameof(value));
        Uncertainty = Require.Positive(uncertainty, 0.2, "uncertainty of the scale", "", nameof(uncertainty));
    }

    /// <summary>s.</summary>
    public double Value { get; }

    /// <summary>Its standard uncertainty.</summary>
    public double Uncertainty { get; }
}
