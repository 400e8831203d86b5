namespace CalibGeom.Verification.Decisions;

/// <summary>Between which limits a quantity must lie; either may be infinite. Immutable.</summary>
public sealed record ToleranceLimits
{
    /// <summary>Limits.</summary>
    /// <param name="low">The lower limit; negative infinity for none.</param>
    /// <param name="high">The upper limit; infinity for none.</param>
    /// <exception cref="ArgumentException">They do not rise, or both are missing.</exception>
    public ToleranceLimits(double low, double high)
    {
        if (!(low < high) || (double.IsInfinity(low) && double.IsInfinity(high)))
            throw new ArgumentException(
                FormattableString.Invariant($"Limits must rise and one at least be finite, not {low} to {high}."),
                nameof(high)
            );
        Low = low;
        High = high;
    }

    /// <summary>The lower limit.</summary>
    public double Low { get; }

    /// <summary>The upper limit.</summary>
    public double High { get; }

    /// <summary>Upper less lower limit.</summary>
    public double Width => High - Low;
}
