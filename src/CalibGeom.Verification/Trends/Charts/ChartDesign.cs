using System.Collections.Concurrent;

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

    private static readonly ConcurrentDictionary<double, ChartDesign> Known = new();

    internal static ChartDesign For(double length) =>
        Known.GetOrAdd(
            length,
            wanted => new ChartDesign(
                RunLength.LimitFor(wanted, l => RunLength.Individuals(l)),
                RunLength.LimitFor(wanted, l => RunLength.Ewma(Weight, l)),
                RunLength.LimitFor(wanted, l => RunLength.Cusum(Allowance, l))
            )
        );
}
