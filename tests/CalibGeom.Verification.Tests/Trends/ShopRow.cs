using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Trends.Changes;
using CalibGeom.Verification.Trends.Charts;

namespace CalibGeom.Verification.Tests.Trends;

/// <summary>Many shops of one kind, and what trend said of them.</summary>
internal sealed class ShopRow
{
    // Charts alone, each with one false alarm in 50 coupons, so that they can be compared with the verdict.
    private static readonly double Single = RunLength.LimitFor(50, l => RunLength.Individuals(l)),
        Average = RunLength.LimitFor(50, l => RunLength.Ewma(0.2, l)),
        Sum = RunLength.LimitFor(50, l => RunLength.Cusum(0.5, l));
    private readonly List<int?> verdict = [],
        individuals = [],
        ewma = [],
        cusum = [],
        growth = [],
        through = [];
    private int sizes,
        dates,
        said,
        early,
        corrected,
        correctable,
        changed,
        watched;

    internal ShopRow(string name, Func<ulong, Shop> shop, int runs, bool corrects = true)
    {
        Name = name;
        for (int run = 0; run < runs; run++)
            Add(shop(FirstSeed + (ulong)run), corrects);
    }

    // Constants are chosen on other seeds than those that are counted.
    private static ulong FirstSeed =>
        ulong.TryParse(Environment.GetEnvironmentVariable("CALIBGEOM_SEED"), out ulong seed) ? seed : 1;

    internal string Name { get; }

    /// <summary>Coupons watched for each false alarm, before anything changed.</summary>
    internal double PerFalseAlarm => watched / Math.Max(0.5, early);

    internal double Detected => verdict.Count(v => v is not null) / (double)Math.Max(1, verdict.Count);

    internal double Verdict => Median(verdict);

    internal double Individuals => Median(individuals);

    internal double Ewma => Median(ewma);

    internal double Cusum => Median(cusum);

    internal double Growth => Median(growth);

    internal double Through => Median(through);

    internal double Sizes => sizes / (double)Math.Max(1, said);

    internal double Dates => dates / (double)Math.Max(1, said);

    internal int Said => said;

    internal double Corrected => corrected / (double)Math.Max(1, correctable);

    internal static string Head =>
        "| shops | coupons per false alarm | seen by the end | verdict | individuals | EWMA | CUSUM "
        + "| growth alone | print-through alone | size covered | date covered | offered | lands |\n"
        + "|---|---|---|---|---|---|---|---|---|---|---|---|---|";

    public override string ToString() =>
        "| "
        + string.Join(
            " | ",
            Name,
            FormattableString.Invariant($"{PerFalseAlarm:0}"),
            Share(Detected, changed, "0"),
            Text(Verdict),
            Text(Individuals),
            Text(Ewma),
            Text(Cusum),
            Text(Growth),
            Text(Through),
            Share(Sizes, said, "0.0"),
            Share(Dates, said, "0.0"),
            Share((double)correctable / Math.Max(1, said), said, "0"),
            Share(Corrected, correctable, "0.0") + (correctable > 0 ? $" of {correctable}" : "")
        )
        + " |";

    private static string Share(double share, int of, string format) =>
        of > 0 ? (100 * share).ToString(format, System.Globalization.CultureInfo.InvariantCulture) + " %" : "-";

    private void Add(Shop shop, bool corrects)
    {
        Trial[] prints = shop.Print();
        LogEntry[] entries = prints.Select((t, i) => new LogEntry(i + 1, t, false)).ToArray();
        bool changes = shop.Light(prints.Length - 1) != 0;
        int from = changes ? shop.Onset : prints.Length;
        changed += changes ? 1 : 0;
        TrendLog log = TrendLog.Of(entries);
        TrendResult result = Trend.Run(log.Current.Points, shop.Options);
        int? first = First(result.Evidence.Select(e => e > 1));
        int skipped = prints.Length - result.Points.Count;
        watched += first is { } at && at < from ? at + 1 : Math.Min(from, result.Points.Count);
        if (first < from)
        {
            // A false alarm: what follows cannot be told apart from it.
            early++;
            return;
        }
        verdict.Add(first - from + 1);
        GaugeCharts? all = result.Charts.FirstOrDefault(c => c.Name == "light") ?? result.Charts.FirstOrDefault();
        individuals.Add(After(all, from, c => c.Points.Select(p => Math.Abs(p) > Single)));
        ewma.Add(After(all, from, c => Averages(c).Averages.Select(Averages(c).Settled.Signals)));
        cusum.Add(After(all, from, Sums));
        growth.Add(After(result.Charts.FirstOrDefault(c => c.Name == "growth"), from, Sums));
        through.Add(After(result.Charts.FirstOrDefault(c => c.Name == "print-through"), from, Sums));
        if (!changes || skipped > 0 || result.Change is not { } change)
            return;
        said++;
        double truth = shop.Light(prints.Length - 1);
        sizes += truth >= change.LogLight.Low && truth <= change.LogLight.High ? 1 : 0;
        double began = 7 * shop.Begins;
        dates += began >= change.Since.Low && began <= change.Since.High ? 1 : 0;
        if (corrects)
            Correct(shop, log, result.Evidence, first!.Value);
    }

    // The exposure is corrected as soon as one is offered. What was known at a coupon is read off one model of all
    // coupons: OnePrefixIsReadLikeItsOwnLog holds that this is what a log that ended there says.
    private void Correct(Shop shop, TrendLog log, IReadOnlyList<double> evidence, int first)
    {
        var model = new ChangeModel(log.Current.Points, shop.Options);
        for (int now = first; now < log.Current.Points.Count; now += 3)
        {
            if (evidence[now] <= 1)
                continue;
            var reader = new ChangeReader(model, shop.Options, now);
            if (reader.LightProbability < 0.5 || reader.Correction() is not { Probability: >= TrendAnswer.Lands } lost)
                continue;
            correctable++;
            double left = shop.Light(now) - lost.LogLight;
            corrected += Math.Abs(2 * shop.GrowthEffect * left) <= TrendOptions.Default.Tolerance ? 1 : 0;
            return;
        }
    }

    private static EwmaChart Averages(GaugeCharts c) => new(c.Points, 0, 1, 0.2, Average);

    private static IEnumerable<bool> Sums(GaugeCharts c)
    {
        var chart = new CusumChart(c.Points, 0, 0.5, Sum);
        return chart.High.Zip(chart.Low, (h, l) => h > Sum || l > Sum);
    }

    private static int? After(GaugeCharts? chart, int from, Func<GaugeCharts, IEnumerable<bool>> signals) =>
        chart is null ? null
        : First(signals(chart).Select((s, i) => s && chart.Coupons[i] >= from)) is { } at ? chart.Coupons[at] - from + 1
        : null;

    private static int? First(IEnumerable<bool> signals)
    {
        int at = 0;
        foreach (bool signal in signals)
        {
            if (signal)
                return at;
            at++;
        }
        return null;
    }

    /// <summary>The median delay in coupons; infinity when fewer than half were seen.</summary>
    private static double Median(List<int?> delays)
    {
        double[] sorted = delays.Select(d => d ?? double.PositiveInfinity).Order().ToArray();
        return sorted.Length == 0 ? double.PositiveInfinity : sorted[sorted.Length / 2];
    }

    private static string Text(double delay) =>
        double.IsInfinity(delay) ? "-" : delay.ToString("0", System.Globalization.CultureInfo.InvariantCulture);
}
