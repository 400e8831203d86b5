using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Trends;

/// <summary>What stands around the evidence: other states, the vat, calipers, coupons that stand out alone.</summary>
internal static class SurroundingWords
{
    // Standard deviations: beyond three or so a chart says that something may have moved; this is a coupon of its own.
    private const double FarOut = 4;

    internal static IEnumerable<Finding> Of(TrendAnswer answer) =>
        [
            .. Apart(answer.Log),
            .. Vat(answer.Log.Current),
            .. Calipers(answer.Log.Current),
            .. StandOut(answer.Result),
            .. answer.Log.Findings,
        ];

    private static IEnumerable<Finding> Apart(TrendLog log) =>
        log
            .Segments.Where(s => s != log.Current)
            .GroupBy(s => string.Join(", ", s.DifferencesOf(log.Current.Reference)))
            .Select(alike =>
                Note(
                    "trend-apart",
                    string.Join(", ", alike.Select(TrendWords.Name)),
                    alike.Key.Length > 0
                        ? $"These prints are another state and are not compared: {alike.Key}."
                        : "These prints were made at other settings and are not compared."
                )
            );

    private static IEnumerable<Finding> Vat(TrendSegment current)
    {
        if (current.Entries[^1].Trial.Conditions.Temperature is { } vat and (< TrendLog.ColdVat or > TrendLog.HotVat))
            yield return new Finding(
                "trend-vat",
                Severity.Warning,
                TrendWords.Name(current),
                FormattableString.Invariant(
                    $"The vat stood at {vat:0.#} degrees C; {TrendLog.ColdVat:0} to {TrendLog.HotVat:0} is sound (common practice)."
                ),
                "Warm or cool the room, or see what the resin's maker says."
            );
    }

    private static IEnumerable<Finding> Calipers(TrendSegment current)
    {
        LogEntry[] read = [.. current.Entries.Where(e => IsMeasured(e.Trial))];
        string[] changed =
        [
            .. read.Zip(read.Skip(1))
                .Where(p => p.First.Trial.Instrument != p.Second.Trial.Instrument)
                .Select(p => FormattableString.Invariant($"print {p.Second.Number}")),
        ];
        if (changed.Length > 0)
            yield return Note(
                "trend-caliper",
                string.Join(", ", changed),
                $"The caliper was changed at {string.Join(", ", changed)}: what was read with one is never compared with what was read with the other.",
                "Stay with one caliper; it need not be true, its error cancels."
            );
    }

    private static bool IsMeasured(Trial trial) =>
        trial.GrowthX is not null || trial.GrowthY is not null || BridgeReading.Of(trial) is not null;

    // Where a change is said, a coupon far from those before it may be its first.
    private static IEnumerable<Finding> StandOut(TrendResult result) =>
        result.Change is not null
            ? []
            : result
                .Charts.SelectMany(c => FarFromNeighbours(c).Select(n => (Coupon: n, c.Name)))
                .Where(f =>
                    f.Coupon >= result.Options.Baseline && f.Coupon < result.Points.Count - 1 && f.Name != "light"
                )
                .GroupBy(f => f.Coupon, f => f.Name)
                .OrderBy(g => g.Key)
                .Select(g =>
                    Note(
                        "trend-outlier",
                        result.Points[g.Key].Name,
                        $"Its {string.Join(" and ", g)} stands far out from the coupons before it, and those after it do not follow: it is something of that coupon alone.",
                        "Look at its readings; if they are wrong, take the print back and add it again."
                    )
                );

    private static IEnumerable<int> FarFromNeighbours(GaugeCharts chart)
    {
        double Far(int i) => i < 0 || i >= chart.Points.Count ? 0 : Math.Abs(chart.Points[i]);
        return Enumerable
            .Range(0, chart.Points.Count)
            .Where(i => Far(i) > FarOut && Far(i) >= Far(i - 1) && Far(i) >= Far(i + 1))
            .Select(i => chart.Coupons[i]);
    }

    private static Finding Note(string rule, string subject, string message, string remedy = "") =>
        new(rule, Severity.Note, subject, message, remedy);
}
