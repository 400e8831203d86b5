namespace CalibGeom.Plates;

/// <summary>How much is missing for a coupon that found no room. Immutable.</summary>
/// <param name="Width">The coupon's shadow along X, mm.</param>
/// <param name="Depth">The coupon's shadow along Y, mm.</param>
/// <param name="WidestGap">The widest gap, mm, with which the coupon would have found room; null when not even 0.1 mm
/// would do, or when it is too high.</param>
/// <param name="LargestScale">The largest coupon of the same shape that would have found room, as a part of this one;
/// null when not even one of 2 % would, or when it is too high.</param>
/// <param name="TooHigh">By how much the coupon is higher than the plate allows, mm, or null.</param>
public sealed record RoomShortage(double Width, double Depth, double? WidestGap, double? LargestScale, double? TooHigh)
{
    /// <summary>
    /// A gap that does, mm: <see cref="WidestGap"/> rounded down to hundredths; null when none is worth telling.
    /// </summary>
    public double? AdvisedGap => WidestGap is { } gap ? Math.Floor(gap * 100 + 1e-9) / 100 : null;

    /// <summary>How much shorter the coupon would have to be in X, mm.</summary>
    public double MissingWidth => Width * (1 - (LargestScale ?? 0));

    /// <summary>How much shorter the coupon would have to be in Y, mm.</summary>
    public double MissingDepth => Depth * (1 - (LargestScale ?? 0));

    /// <summary>
    /// The largest value that still does, to a hundredth of the range, rounded down; null when the lowest does not.
    /// </summary>
    internal static double? Widest(double low, double high, Func<double, bool> does)
    {
        if (!does(low))
            return null;
        double step = (high - low) / 100;
        while (high - low > step)
        {
            double middle = (low + high) / 2;
            if (does(middle))
                low = middle;
            else
                high = middle;
        }
        return low;
    }
}
