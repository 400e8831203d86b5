namespace CalibGeom.Verification.Trends.Charts;

/// <summary>
/// Exponentially weighted moving average (Roberts, Technometrics 1 (1959) 239): z = lambda x + (1 - lambda) z, from the
/// target on. Immutable.
/// </summary>
public sealed class EwmaChart
{
    private readonly double[] averages,
        deviations;

    /// <summary>A chart.</summary>
    /// <param name="values">The values in order of time.</param>
    /// <param name="target">Where they should lie.</param>
    /// <param name="deviation">Their standard deviation, above 0.</param>
    /// <param name="weight">lambda, the weight of the newest value, above 0 and at most 1. Default 0.2.</param>
    /// <param name="reach">Half the width of the limits in standard deviations of the average, above 0. Default 2.962:
    /// one false alarm in 500 points.</param>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public EwmaChart(
        IEnumerable<double> values,
        double target = 0,
        double deviation = 1,
        double weight = 0.2,
        double reach = 2.962
    )
    {
        ArgumentNullException.ThrowIfNull(values);
        Require.Positive(deviation, double.MaxValue, "standard deviation", "", nameof(deviation));
        Weight = Require.Positive(weight, 1, "weight of the newest value", "", nameof(weight));
        Reach = Require.Positive(reach, 100, "width of the limits", "", nameof(reach));
        Target = target;
        double z = target,
            left = 1;
        var averaged = new List<double>();
        var spread = new List<double>();
        double settled = deviation * Math.Sqrt(weight / (2 - weight));
        foreach (double x in values)
        {
            z += weight * (x - z);
            left *= (1 - weight) * (1 - weight);
            averaged.Add(z);
            spread.Add(settled * Math.Sqrt(1 - left));
        }
        (averages, deviations) = (averaged.ToArray(), spread.ToArray());
        Settled = new ControlLimits(target - reach * settled, target, target + reach * settled);
    }

    /// <summary>lambda.</summary>
    public double Weight { get; }

    /// <summary>Half the width of the limits in standard deviations of the average.</summary>
    public double Reach { get; }

    /// <summary>Where the values should lie.</summary>
    public double Target { get; }

    /// <summary>The averages, one a value.</summary>
    public IReadOnlyList<double> Averages => averages;

    /// <summary>
    /// The limits of a long series, which the run lengths of <see cref="RunLength.Ewma"/> are meant for.
    /// </summary>
    public ControlLimits Settled { get; }

    /// <summary>The narrower limits at a point, which know how few values came before.</summary>
    /// <param name="index">The point, from 0.</param>
    public ControlLimits At(int index) =>
        new(Target - Reach * deviations[index], Target, Target + Reach * deviations[index]);

    /// <summary>The first point beyond the limits of a long series, from 0, or null.</summary>
    public int? FirstSignal => Array.FindIndex(averages, z => Settled.Signals(z)) is var index and >= 0 ? index : null;
}
