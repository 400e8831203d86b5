using CalibGeom.Verification.Trends.Changes;
using CalibGeom.Verification.Trends.Charts;
using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Trends;

/// <summary>Whether a series of coupons of one process has moved, since when, how fast, and what follows.</summary>
public static class Trend
{
    // Halving the light ruins a print; a log that would not even show that has not told anything yet.
    internal const double LeastUse = 0.5;
    private const int MostMore = 60;

    /// <summary>Judges a series.</summary>
    /// <param name="points">Coupons of one process under one set of conditions, in order of time; at least one.</param>
    /// <param name="options">What counts as moved; null for the defaults.</param>
    /// <param name="progress">Told the finished part, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentException">There is no coupon.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static TrendResult Run(
        IReadOnlyList<TrendPoint> points,
        TrendOptions? options = null,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(points);
        options ??= TrendOptions.Default;
        if (points.Count == 0)
            throw new ArgumentException("A trend needs at least one coupon.", nameof(points));
        var model = new ChangeModel(points, options, cancellation);
        progress?.Report(0.3);
        int last = points.Count - 1;
        double[] evidence = Enumerable
            .Range(0, points.Count)
            .Select(n => Math.Exp(Math.Min(600, model.LogStatistic(n, cancellation))) / model.Limit(n))
            .ToArray();
        progress?.Report(0.8);
        cancellation.ThrowIfCancellationRequested();
        GaugeCharts[] charts = ChartsOf(model, options);
        bool moved = evidence[last] > 1;
        TrendChange? change = moved ? new ChangeReader(model, options, last, cancellation).Read() : null;
        double? seen = WouldBeSeen(model, options);
        bool open =
            !moved
            && (
                points.Count <= options.Baseline
                || seen is null
                || seen > LeastUse
                || evidence[last] > 0.5
                || charts.Any(c => c.PointSignals || c.EwmaSignals || c.CusumSignals)
            );
        progress?.Report(1);
        return new TrendResult
        {
            Points = points,
            Dated =
                points[0].Date is not null && points.All(p => p.Date is not null) && points[0].Date != points[^1].Date,
            Times = model.Times,
            Evidence = evidence,
            SeemsToMove = evidence[last] > 0.5 && charts.Length > 0,
            Charts = charts,
            Change = change,
            WouldBeSeen = seen,
            // What is rather chance is told by the next coupon: it follows or it does not.
            More = stop =>
                open ? More(points, options, model, evidence[last], seen, stop)
                : change is { IsRatherChance: true } ? 1
                : 0,
            Verdict =
                change is not null ? VerdictOf(change)
                : open ? TrendVerdict.NotEnoughData
                : TrendVerdict.NotSeenToMove,
            Options = options,
        };
    }

    private static TrendVerdict VerdictOf(TrendChange change) =>
        change.IsRatherChance ? TrendVerdict.NotEnoughData
        : change.IsRatherBeyond ? TrendVerdict.Recalibrate
        : TrendVerdict.Drifting;

    private static GaugeCharts[] ChartsOf(ChangeModel model, TrendOptions options)
    {
        IReadOnlyList<TrendPoint> points = model.Filter.Points;
        Gauge[] gauges = points.SelectMany(p => p.Values).Select(v => v.Gauge).Distinct().Order().ToArray();
        double[] light = [options.LightEffect.Median, options.PenetrationDepth.Median, -options.ColumnExponent];
        var found = gauges
            .Select(g => ChartOf(model, Name(g), v => v.Gauge == g ? 1 : 0, options))
            .OfType<GaugeCharts>()
            .ToList();
        if (gauges.Length > 1 && ChartOf(model, "light", v => light[(int)v.Gauge], options) is { } all)
            found.Insert(0, all);
        return found.ToArray();
    }

    internal static string Name(Gauge gauge) =>
        gauge switch
        {
            Gauge.Growth => "growth",
            Gauge.PrintThrough => "print-through",
            _ => "column limit",
        };

    private static GaugeCharts? ChartOf(
        ChangeModel model,
        string name,
        Func<GaugeValue, double> direction,
        TrendOptions options
    )
    {
        var coupons = new List<int>();
        var values = new List<double>();
        for (int n = 0; n < model.Filter.Points.Count; n++)
        {
            if (!model.Filter.Points[n].Values.Any(v => direction(v) != 0))
                continue;
            if (model.Filter.Residual(n, direction) is not { } residual)
                continue;
            coupons.Add(n);
            values.Add(Standardised(model, n, residual));
        }
        if (values.Count == 0)
            return null;
        ChartDesign design = options.Charts;
        return new GaugeCharts
        {
            Name = name,
            Coupons = coupons,
            Points = values,
            RunLength = options.ChartLength,
            Reach = design.Reach,
            Ewma = new EwmaChart(values, 0, 1, ChartDesign.Weight, design.EwmaReach),
            Cusum = new CusumChart(values, 0, ChartDesign.Allowance, design.CusumLimit),
        };
    }

    /// <summary>
    /// The stated uncertainties hold to a common factor that the coupons before teach, so that the residual follows
    /// Student's law; here as the normal number of the same probability (Hawkins, Statistician 36 (1987) 21).
    /// </summary>
    private static double Standardised(ChangeModel model, int n, double residual)
    {
        double known = ChangeModel.Trust + (n > 0 ? model.Filter.Counts[n - 1] : 0),
            squares = ChangeModel.Trust + (n > 0 ? model.Filter.Squares[n - 1] : 0);
        double t = residual / Math.Sqrt(squares / known);
        double tail = StudentT.CDF(0, 1, known, -Math.Abs(t));
        return tail < 1e-300 ? 37 * Math.Sign(t) : -Normal.InvCDF(0, 1, tail) * Math.Sign(t);
    }

    /// <summary>
    /// The probability that the last coupon alone differs so much, in any gauge or in the light of all, when nothing
    /// has moved: the least over what was looked at, times their number.
    /// </summary>
    internal static double LastAlone(ChangeModel model, TrendOptions options)
    {
        int last = model.Filter.Points.Count - 1;
        double[] chances = ChartsOf(model, options)
            .Where(c => c.Coupons[^1] == last)
            .Select(c => 2 * Normal.CDF(0, 1, -Math.Abs(c.Points[^1])))
            .ToArray();
        return chances.Length == 0 ? 1 : Math.Min(1, chances.Length * chances.Min());
    }

    private static double? WouldBeSeen(ChangeModel model, TrendOptions options)
    {
        int last = model.Times.Length - 1,
            middle = Math.Max(options.Baseline, model.Times.Length / 2);
        ChangeCase? step = model.Cases.FirstOrDefault(c => !c.Drifts && c.From == middle);
        if (step is null)
            return null;
        double[] response = [options.LightEffect.Median, options.PenetrationDepth.Median, -options.ColumnExponent];
        double information = step.Information(last, response);
        if (information <= 0)
            return null;
        // The statistic is mainly exp(z^2 / 2) / sqrt(1 + s^2 I) over a few neighbouring cases; 0.84 for 8 of 10.
        double needed = Math.Sqrt(2 * Math.Log(4 * model.Limit(last) * Math.Sqrt(1 + 0.09 * information)));
        return 1 - Math.Exp(-(needed + 0.84) / Math.Sqrt(information));
    }

    private static int? More(
        IReadOnlyList<TrendPoint> points,
        TrendOptions options,
        ChangeModel model,
        double evidence,
        double? seen,
        CancellationToken cancellation
    )
    {
        ChangeComponent? best =
            evidence > 0.5 ? new ChangeReader(model, options, points.Count - 1, cancellation).Best : null;
        var grown = points.ToList();
        for (int more = 1; more <= MostMore; more++)
        {
            grown.Add(Continued(points, model, best, more));
            if (grown.Count <= options.Baseline)
                continue;
            var there = new ChangeModel(grown, options, cancellation);
            int last = grown.Count - 1;
            bool settled = best is null || there.LogStatistic(last, cancellation) > Math.Log(there.Limit(last));
            bool useful = seen <= LeastUse || WouldBeSeen(there, options) <= LeastUse;
            if (settled && useful)
                return more;
        }
        return null;
    }

    /// <summary>A coupon like the last, as it would read if what seems to happen goes on.</summary>
    private static TrendPoint Continued(
        IReadOnlyList<TrendPoint> points,
        ChangeModel model,
        ChangeComponent? best,
        int more
    )
    {
        TrendPoint pattern = points.LastOrDefault(p => p.Values.Count > 0) ?? points[^1];
        double Moved(int n, GaugeValue v) =>
            best is { } c ? c.Mean * c.Case.Course[n] * c.Cause.Response[(int)v.Gauge] : 0;
        double ahead = best is { } b ? b.Case.Course[^1] + (b.Case.Drifts ? more : 0) : 0;
        return new TrendPoint(
            pattern.Values.Select(v =>
            {
                double level = points
                    .SelectMany(
                        (p, n) =>
                            p
                                .Values.Where(w => w.Gauge == v.Gauge && w.Series == v.Series)
                                .Select(w => w.Value - Moved(n, w))
                    )
                    .Average();
                double change = best is { } c ? c.Mean * ahead * c.Cause.Response[(int)v.Gauge] : 0;
                return new GaugeValue(v.Gauge, v.Series, Math.Clamp(level + change, -20, 20), v.Uncertainty, v.Kin)
                {
                    Felt = v.Felt,
                };
            }),
            points[^1].Date?.AddDays((int)Math.Round(more * model.Spacing))
        );
    }
}
