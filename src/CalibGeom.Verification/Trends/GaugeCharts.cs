using CalibGeom.Verification.Trends.Charts;

namespace CalibGeom.Verification.Trends;

/// <summary>
/// The charts of one gauge, or of the light that all gauges together speak of. Their points are standardised: by how
/// many standard deviations a coupon lies away from what those before it let expect, each with its own uncertainty.
/// Immutable.
/// </summary>
public sealed record GaugeCharts
{
    /// <summary>Such as <c>growth</c> or <c>light</c>.</summary>
    public required string Name { get; init; }

    /// <summary>The coupons that have a point, by their number in the segment, from 0.</summary>
    public required IReadOnlyList<int> Coupons { get; init; }

    /// <summary>The points: standard normal and independent while nothing moves.</summary>
    public required IReadOnlyList<double> Points { get; init; }

    /// <summary>Half the width of the limits of single points.</summary>
    public required double Reach { get; init; }

    /// <summary>The moving average.</summary>
    public required EwmaChart Ewma { get; init; }

    /// <summary>The cumulative sums.</summary>
    public required CusumChart Cusum { get; init; }

    /// <summary>One false alarm of each of the three charts in about so many coupons.</summary>
    public required double RunLength { get; init; }

    /// <summary>Whether the last point is out of its limits.</summary>
    public bool PointSignals => Points.Count > 0 && Math.Abs(Points[^1]) > Reach;

    /// <summary>Whether the moving average stands out of its limits at the last point.</summary>
    public bool EwmaSignals => Points.Count > 0 && Ewma.Settled.Signals(Ewma.Averages[^1]);

    /// <summary>Whether a cumulative sum stands above its limit at the last point.</summary>
    public bool CusumSignals => Points.Count > 0 && (Cusum.High[^1] > Cusum.Limit || Cusum.Low[^1] > Cusum.Limit);

    /// <summary>
    /// The mean size of the step between neighbouring points over what it is while nothing moves, 2 / sqrt(pi); null
    /// with fewer than two. Far above 1 the coupons scatter more than was stated.
    /// </summary>
    public double? RangeRatio => Points.Count < 2 ? null : IndividualsChart.Of(Points).MeanRange / IndividualsChart.D2;
}
