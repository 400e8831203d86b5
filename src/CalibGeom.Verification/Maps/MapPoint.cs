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
    /// Its thickness next to the plate, mm, or null: the plinth, which tells whether the plate is level.
    /// </summary>
    public double? Thickness { get; init; }

    /// <summary>Standard uncertainty of the thickness without what all coupons share, mm. Default 0.010.</summary>
    public double ThicknessUncertainty { get; init; } = 0.010;
}
