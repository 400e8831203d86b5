namespace CalibGeom.Verification.Uncertainty;

/// <summary>A closed interval.</summary>
/// <param name="Low">Its lower end.</param>
/// <param name="High">Its upper end.</param>
public readonly record struct Interval(double Low, double High)
{
    /// <summary>Upper less lower end.</summary>
    public double Width => High - Low;

    /// <summary>The middle.</summary>
    public double Middle => (Low + High) / 2;

    /// <summary>Whether a value lies in it, ends included.</summary>
    /// <param name="value">The value.</param>
    public bool Contains(double value) => value >= Low && value <= High;
}
