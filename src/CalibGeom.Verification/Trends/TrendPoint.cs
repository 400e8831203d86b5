namespace CalibGeom.Verification.Trends;

/// <summary>One coupon of a series: when, and what it says. Immutable.</summary>
public sealed record TrendPoint
{
    /// <summary>A coupon.</summary>
    /// <param name="values">What it says; may be empty.</param>
    /// <param name="date">The day of the print, or null.</param>
    /// <param name="name">What it is called in answers, such as <c>print 7</c>.</param>
    public TrendPoint(IEnumerable<GaugeValue> values, DateOnly? date = null, string name = "")
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentNullException.ThrowIfNull(name);
        Values = values.ToArray();
        Date = date;
        Name = name;
    }

    /// <summary>What it says.</summary>
    public IReadOnlyList<GaugeValue> Values { get; }

    /// <summary>The day of the print, or null.</summary>
    public DateOnly? Date { get; }

    /// <summary>Whether all that coupons say are words of felt fits.</summary>
    internal static bool AreWordsAlone(IEnumerable<TrendPoint> points) =>
        points.SelectMany(p => p.Values).All(v => v.Felt);

    /// <summary>What it is called in answers.</summary>
    public string Name { get; }
}
