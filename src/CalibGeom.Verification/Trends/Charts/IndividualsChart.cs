namespace CalibGeom.Verification.Trends.Charts;

/// <summary>
/// Single values with limits from their moving range: mean +- 3 MR / d2, and the ranges themselves up to D4 MR.
/// Immutable.
/// </summary>
public sealed class IndividualsChart
{
    /// <summary>
    /// d2 of two values: the mean range of a pair from a normal law over its standard deviation, 2 / sqrt(pi) = 1.128.
    /// </summary>
    public static readonly double D2 = 2 / Math.Sqrt(Math.PI);

    /// <summary>
    /// D4 of two values: 1 + 3 d3 / d2 = 3.267, with d3 the standard deviation of that range, sqrt(2 - 4 / pi) = 0.853.
    /// </summary>
    public static readonly double D4 = 1 + 3 * Math.Sqrt(2 - 4 / Math.PI) / D2;

    private IndividualsChart(double[] values, double[] ranges, double mean, double range)
    {
        Values = values;
        MovingRanges = ranges;
        MeanRange = range;
        double reach = 3 * range / D2;
        Limits = new ControlLimits(mean - reach, mean, mean + reach);
        RangeLimits = new ControlLimits(0, range, D4 * range);
    }

    /// <summary>The values, in order.</summary>
    public IReadOnlyList<double> Values { get; }

    /// <summary>The size of each step from one value to the next; one fewer than the values.</summary>
    public IReadOnlyList<double> MovingRanges { get; }

    /// <summary>Their mean.</summary>
    public double MeanRange { get; }

    /// <summary>Mean and limits of the values.</summary>
    public ControlLimits Limits { get; }

    /// <summary>Mean and limits of the ranges.</summary>
    public ControlLimits RangeLimits { get; }

    /// <summary>The standard deviation that the moving ranges speak of: their mean over d2.</summary>
    public double Deviation => MeanRange / D2;

    /// <summary>A chart of values.</summary>
    /// <param name="values">At least two finite values, in order of time.</param>
    /// <exception cref="ArgumentException">There are fewer, or one is no number.</exception>
    public static IndividualsChart Of(IEnumerable<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        double[] all = values.ToArray();
        if (all.Length < 2 || !all.All(double.IsFinite))
            throw new ArgumentException("A chart of individuals needs at least two finite values.", nameof(values));
        double[] ranges = all.Zip(all.Skip(1), (a, b) => Math.Abs(b - a)).ToArray();
        return new IndividualsChart(all, ranges, all.Average(), ranges.Average());
    }
}
