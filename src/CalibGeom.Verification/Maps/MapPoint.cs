using CalibGeom.Verification.Trends;

namespace CalibGeom.Verification.Maps;

/// <summary>One coupon of a print: where it stood and what it says. Immutable.</summary>
public sealed record MapPoint
{
    /// <summary>A coupon.</summary>
    /// <param name="name">Its label, such as <c>A1</c>.</param>
    /// <param name="x">X of its middle in plate coordinates (origin at the plate's centre), mm, -1000 to 1000.</param>
    /// <param name="y">Y of its middle, mm.</param>
    /// <param name="values">What it says of light; values of one series are compared with each other.</param>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public MapPoint(string name, double x, double y, IEnumerable<GaugeValue> values)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(values);
        Name = name;
        X = Require.Within(x, -1000, 1000, "place along X", "mm", nameof(x));
        Y = Require.Within(y, -1000, 1000, "place along Y", "mm", nameof(y));
        Values = values.ToArray();
    }

    /// <summary>Its label.</summary>
    public string Name { get; }

    /// <summary>X of its middle, mm.</summary>
    public double X { get; }

    /// <summary>Y of its middle, mm.</summary>
    public double Y { get; }

    /// <summary>What it says of light.</summary>
    public IReadOnlyList<GaugeValue> Values { get; }

    /// <summary>
    /// Its thickness next to the plate, mm, above 0 and at most 1000, or null: the plinth, which tells whether the
    /// plate is level.
    /// </summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double? Thickness
    {
        get;
        init => field = value is { } mm ? Require.Positive(mm, 1000, "thickness", "mm", nameof(Thickness)) : null;
    }

    /// <summary>
    /// Standard uncertainty of the thickness without what all coupons share, mm, above 0 and at most 5. Default 0.010.
    /// </summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double ThicknessUncertainty
    {
        get;
        init => field = Require.Positive(value, 5, "uncertainty of the thickness", "mm", nameof(ThicknessUncertainty));
    } = 0.010;
}
