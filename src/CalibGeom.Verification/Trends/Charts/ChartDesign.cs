namespace CalibGeom.Verification.Trends.Charts;

/// <summary>Limits of the three charts that give one run length. Immutable.</summary>
/// <param name="Reach">Half the width of the limits of single points, in standard deviations.</param>
/// <param name="EwmaReach">L of the moving average of weight <see cref="Weight"/>.</param>
/// <param name="CusumLimit">h of the sums with the allowance <see cref="Allowance"/>.</param>
internal sealed record ChartDesign(double Reach, double EwmaReach, double CusumLimit)
{
    /// <summary>lambda: slow enough for a drift, quick enough for a step of one standard deviation.</summary>
    internal const double Weight = 0.2;

    /// <summary>k: half of one standard deviation, the step that should be found soonest.</summary>
    internal const double Allowance = 0.5;

    /// <summary>The limits for a run length, worked out anew.</summary>
    /// <param name="length">Coupons to a false alarm.</param>
    internal static ChartDesign For(double length) =>
        new(
            RunLength.LimitFor(length, l => RunLength.Individuals(l)),
            RunLength.LimitFor(length, l => RunLength.Ewma(Weight, l)),
            RunLength.LimitFor(length, l => RunLength.Cusum(Allowance, l))
        );
}
