namespace CalibGeom.Verification.Tuning;

/// <summary>So many of so many.</summary>
/// <param name="Number">How many.</param>
/// <param name="Of">Of how many.</param>
public readonly record struct Counted(int Number, int Of)
{
    /// <inheritdoc/>
    public override string ToString() => FormattableString.Invariant($"{Number} of {Of}");
}
