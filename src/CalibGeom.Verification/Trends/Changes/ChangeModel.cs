namespace CalibGeom.Verification.Trends.Changes;

/// <summary>
/// All ways in which a series may have changed, weighed by its coupons: for each the likelihood ratio against "nothing
/// moved", over normal priors of its size. Their sum is the statistic of Shiryaev and Roberts: while nothing moves it
/// grows by at most one a coupon on average, so that a limit of A gives at least A coupons to a false alarm (Pollak,
/// Annals of Statistics 13 (1985) 206). Where the series lie is not known before the first coupon, and the stated
/// uncertainties only to a common factor, which the coupons teach.
/// </summary>
internal sealed class ChangeModel
{
    // Standard deviations of ln(light) that a step, and a drift from one coupon to the next, may have: from what can
    // barely matter to a lamp that fails. Our estimate.
    private static readonly double[] Steps = [0.1, 0.3, 1.0],
        Drifts = [0.015, 0.06, 0.2];

    /// <summary>
    /// How many readings' worth the stated uncertainties count against the scatter that is seen: their common factor
    /// then lies between 0.7 and 1.9 with 95 %. Our estimate.
    /// </summary>
    internal const double Trust = 8;

    // What comes suddenly (film, screen, bottle) mostly stands in the log and starts a new segment; what is left mostly
    // creeps. Our estimate.
    private const double DriftShare = 0.85;

    // Words jump where the truth crosses a range: so much more is asked of them for the same rate of false alarms,
    // found by simulating shops that read nothing else.
    private const double MoreOfWords = 1.2;

    private readonly double perCoupon;
    private readonly ChangeCase[] cases;
    private readonly Cause[] causes;
    private readonly double[] logWeights;

    internal ChangeModel(
        IReadOnlyList<TrendPoint> points,
        TrendOptions options,
        CancellationToken cancellation = default
    )
    {
        perCoupon =
            1.25 * Math.Pow(options.RunLength / 85, 0.68) * (TrendPoint.AreWordsAlone(points) ? MoreOfWords : 1);
        Times = TimesOf(points);
        Spacing = points.Count > 1 && Times[^1] > Times[0] ? (Times[^1] - Times[0]) / (points.Count - 1) : 1;
        Filter = CouponFilter.Of(points, options, cancellation);
        causes = Cause.All(points.SelectMany(p => p.Values).Select(v => v.Gauge).ToHashSet(), options);
        logWeights = [.. causes.Select(c => Math.Log(c.Weight))];
        int first = Math.Max(1, options.Baseline);
        cases =
        [
            .. Enumerable.Range(first, Math.Max(0, points.Count - first)).Select(j => Case(false, j)),
            .. Enumerable
                .Range(0, Math.Max(0, points.Count - 1))
                .Where(j => Times[j] < Times[^1])
                .Select(j => Case(true, j)),
        ];

        ChangeCase Case(bool drifts, int from)
        {
            cancellation.ThrowIfCancellationRequested();
            return new ChangeCase(Filter, Times, Spacing, drifts, from);
        }
    }

    internal CouponFilter Filter { get; }

    /// <summary>Days since the first coupon, or their number where days are not known.</summary>
    internal double[] Times { get; }

    /// <summary>The mean time between coupons.</summary>
    internal double Spacing { get; }

    internal IReadOnlyList<ChangeCase> Cases => cases;

    internal IReadOnlyList<Cause> Causes => causes;

    /// <summary>
    /// The statistic that is said to be a change after coupon <paramref name="last"/>. It rises with the number of
    /// dates at which something could have changed; the constants were found by simulating series that do not move
    /// (normal readings, 80 coupons, 150 to 250 runs each).
    /// </summary>
    internal double Limit(int last) => perCoupon * (last + 6);

    /// <summary>ln of the statistic after coupon <paramref name="last"/>.</summary>
    internal double LogStatistic(int last, CancellationToken cancellation = default)
    {
        double top = double.NegativeInfinity,
            sum = 0;
        foreach (ChangeComponent c in Components(last, cancellation))
        {
            if (c.LogWeight > top)
            {
                sum = sum * Math.Exp(top - c.LogWeight) + 1;
                top = c.LogWeight;
            }
            else
                sum += Math.Exp(c.LogWeight - top);
        }
        return sum > 0 ? top + Math.Log(sum) : double.NegativeInfinity;
    }

    /// <summary>Every way of having changed, after a coupon.</summary>
    internal IEnumerable<ChangeComponent> Components(int last, CancellationToken cancellation = default)
    {
        double scatter = Trust + Filter.Squares[last],
            freedom = Trust + Filter.Counts[last];
        foreach (ChangeCase change in cases)
        {
            if (change.Needs > last + 1)
                continue;
            cancellation.ThrowIfCancellationRequested();
            double[] scales = change.Drifts ? Drifts : Steps;
            double share = Math.Log((change.Drifts ? DriftShare : 1 - DriftShare) / scales.Length);
            for (int c = 0; c < causes.Length; c++)
            {
                Cause cause = causes[c];
                double information = change.Information(last, cause.Response),
                    score = change.Score(last, cause.Response);
                foreach (double scale in scales)
                {
                    double variance = scale * scale,
                        growth = 1 + variance * information;
                    double left = Math.Max(1e-9, scatter - variance * score * score / growth);
                    double weight =
                        share + logWeights[c] - 0.5 * Math.Log(growth) - freedom / 2 * Math.Log(left / scatter);
                    yield return new ChangeComponent(
                        weight,
                        change,
                        cause,
                        variance * score / growth,
                        Math.Sqrt(variance / growth * left / (freedom - 2))
                    );
                }
            }
        }
    }

    private static double[] TimesOf(IReadOnlyList<TrendPoint> points)
    {
        bool dated = points.Count > 1 && points.All(p => p.Date is not null) && points[0].Date != points[^1].Date;
        return points
            .Select((p, n) => dated ? p.Date!.Value.DayNumber - points[0].Date!.Value.DayNumber : (double)n)
            .ToArray();
    }
}
