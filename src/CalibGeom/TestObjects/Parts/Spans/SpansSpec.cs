namespace CalibGeom.TestObjects.Parts.Spans;

/// <summary>
/// Two pairs of posts whose far outside faces tell scale (which grows with length) from growth (which does not).
/// Immutable; every value is checked when it is set, so that a spec that exists is in range. Compares by value.
/// </summary>
public sealed record SpansSpec
{
    /// <summary>Outside width over the pair along X. Range 8 to 300 mm. Default 40 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double X
    {
        get;
        init => field = SpansParameters.X.Require(value);
    } = 40;

    /// <summary>Outside width over the pair along Y. Range 8 to 300 mm. Default 25 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double Y
    {
        get;
        init => field = SpansParameters.Y.Require(value);
    } = 25;
}
