namespace CalibGeom.Verification.Uncertainty;

/// <summary>
/// Mean, standard deviation and lag-1 autocorrelation of a sample. Deviations are taken from a first mean and corrected
/// for what rounding left in it (the corrected two-pass algorithm of Chan, Golub and LeVeque, 1983). Immutable.
/// </summary>
public sealed record SampleStatistics
{
    private SampleStatistics(int count, double mean, double standardDeviation, double autocorrelation)
    {
        Count = count;
        Mean = mean;
        StandardDeviation = standardDeviation;
        Autocorrelation = autocorrelation;
    }

    /// <summary>How many values.</summary>
    public int Count { get; }

    /// <summary>The arithmetic mean.</summary>
    public double Mean { get; }

    /// <summary>The standard deviation with n - 1; 0 for a single value.</summary>
    public double StandardDeviation { get; }

    /// <summary>Autocorrelation at lag 1; 0 when all values are equal.</summary>
    public double Autocorrelation { get; }

    /// <summary>Standard deviation of the mean, s / sqrt(n).</summary>
    public double StandardErrorOfMean => StandardDeviation / Math.Sqrt(Count);

    /// <summary>The statistics of a sample.</summary>
    /// <param name="values">At least one finite value.</param>
    /// <exception cref="ArgumentException">There is no value, or one is not finite.</exception>
    public static SampleStatistics Of(IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.Count == 0)
            throw new ArgumentException("values is empty; one value is needed at least.", nameof(values));
        double shift = values[0],
            sum = 0;
        foreach (double v in values)
        {
            if (!double.IsFinite(v))
                throw new ArgumentException("values holds one that is not finite.", nameof(values));
            sum += v - shift;
        }
        double mean = shift + sum / values.Count;
        double squares = 0,
            rest = 0,
            lagged = 0;
        for (int i = 0; i < values.Count; i++)
        {
            double d = values[i] - mean;
            squares += d * d;
            rest += d;
            if (i > 0)
                lagged += d * (values[i - 1] - mean);
        }
        squares -= rest * rest / values.Count;
        double deviation = values.Count > 1 ? Math.Sqrt(Math.Max(0, squares) / (values.Count - 1)) : 0;
        return new SampleStatistics(
            values.Count,
            mean + rest / values.Count,
            deviation,
            squares > 0 ? lagged / squares : 0
        );
    }
}
