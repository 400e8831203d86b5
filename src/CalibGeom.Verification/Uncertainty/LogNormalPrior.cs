namespace CalibGeom.Verification.Uncertainty;

/// <summary>
/// What is believed of a positive quantity: its median and the factor between the median and one standard deviation.
/// Immutable.
/// </summary>
public sealed record LogNormalPrior
{
    /// <summary>A lognormal prior.</summary>
    /// <param name="median">The median, above 0.</param>
    /// <param name="logDeviation">The standard deviation of its natural logarithm, above 0 and at most 5.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public LogNormalPrior(double median, double logDeviation)
    {
        Median = Require.Positive(median, 1e6, "median", "", nameof(median));
        LogDeviation = Require.Positive(logDeviation, 5, "deviation of the logarithm", "", nameof(logDeviation));
    }

    /// <summary>The median.</summary>
    public double Median { get; }

    /// <summary>The standard deviation of the natural logarithm.</summary>
    public double LogDeviation { get; }

    /// <summary>The 2.5 % point.</summary>
    public double Low => At(-Coverage.NormalFactor);

    /// <summary>The 97.5 % point.</summary>
    public double High => At(Coverage.NormalFactor);

    /// <summary>The prior with a median whose logarithm spreads from low to high in its central 95 %.</summary>
    /// <param name="median">The median.</param>
    /// <param name="low">The 2.5 % point, above 0.</param>
    /// <param name="high">The 97.5 % point.</param>
    public static LogNormalPrior Of95(double median, double low, double high) =>
        new(median, Math.Log(high / low) / (2 * Coverage.NormalFactor));

    /// <summary>The value a number of standard deviations from the median on the logarithmic scale.</summary>
    internal double At(double z) => Median * Math.Exp(z * LogDeviation);
}
