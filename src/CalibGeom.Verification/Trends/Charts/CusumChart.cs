namespace CalibGeom.Verification.Trends.Charts;

/// <summary>
/// Tabular cumulative sums (Page, Biometrika 41 (1954) 100): what values lie beyond the target by more than an
/// allowance is added up, on either side, never below 0. Immutable.
/// </summary>
public sealed class CusumChart
{
    private readonly double[] high,
        low;
    private readonly double target,
        allowance;

    /// <summary>A chart.</summary>
    /// <param name="values">The values in order of time.</param>
    /// <param name="target">Where they should lie.</param>
    /// <param name="allowance">k, in the values' unit, at least 0: half the shift that should be found soon. Default
    /// 0.5, for values in standard deviations.</param>
    /// <param name="limit">h, in the values' unit, above 0. Default 5: one false alarm in 465 points.</param>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public CusumChart(IEnumerable<double> values, double target = 0, double allowance = 0.5, double limit = 5)
    {
        ArgumentNullException.ThrowIfNull(values);
        this.allowance = Require.Within(allowance, 0, double.MaxValue, "allowance", "", nameof(allowance));
        Limit = Require.Positive(limit, double.MaxValue, "limit", "", nameof(limit));
        this.target = target;
        double up = 0,
            down = 0;
        var ups = new List<double>();
        var downs = new List<double>();
        foreach (double x in values)
        {
            ups.Add(up = Math.Max(0, up + x - target - allowance));
            downs.Add(down = Math.Max(0, down + target - x - allowance));
        }
        (high, low) = (ups.ToArray(), downs.ToArray());
    }

    /// <summary>h.</summary>
    public double Limit { get; }

    /// <summary>Sums upward, one a value.</summary>
    public IReadOnlyList<double> High => high;

    /// <summary>Sums downward.</summary>
    public IReadOnlyList<double> Low => low;

    /// <summary>The first point at which a sum is above the limit, from 0, or null.</summary>
    public int? FirstSignal
    {
        get
        {
            for (int i = 0; i < high.Length; i++)
                if (high[i] > Limit || low[i] > Limit)
                    return i;
            return null;
        }
    }

    /// <summary>
    /// The last point before a sum that now stands at a point began to grow: the values changed after it. -1 when it
    /// has grown from the start on.
    /// </summary>
    /// <param name="index">The point, from 0.</param>
    public int LastBefore(int index)
    {
        double[] sums = high[index] >= low[index] ? high : low;
        int at = index;
        while (at >= 0 && sums[at] > 0)
            at--;
        return at;
    }

    /// <summary>The mean to which the values have moved since then.</summary>
    /// <param name="index">The point, from 0.</param>
    internal double MeanSince(int index)
    {
        int count = index - LastBefore(index);
        if (count == 0)
            return target;
        return high[index] >= low[index]
            ? target + allowance + high[index] / count
            : target - allowance - low[index] / count;
    }
}
