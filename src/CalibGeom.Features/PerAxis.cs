namespace CalibGeom.Features;

/// <summary>
/// A length that may differ between X and Y, mm. In JSON a number when both are equal, else <c>[x, y]</c>.
/// </summary>
/// <param name="X">Along X, mm.</param>
/// <param name="Y">Along Y, mm.</param>
public readonly record struct PerAxis(double X, double Y)
{
    /// <summary>The same length on both axes.</summary>
    /// <param name="both">The length, mm.</param>
    public static implicit operator PerAxis(double both) => new(both, both);

    /// <summary>The same length on both axes.</summary>
    /// <param name="both">The length, mm.</param>
    public static PerAxis FromDouble(double both) => both;

    /// <summary>Whether both axes have the same length.</summary>
    public bool IsUniform => X.Equals(Y);

    /// <summary>A number, or <c>[x, y]</c>, in the invariant culture.</summary>
    public override string ToString() =>
        IsUniform ? FormattableString.Invariant($"{X}") : FormattableString.Invariant($"[{X}, {Y}]");
}
