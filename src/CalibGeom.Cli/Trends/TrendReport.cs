using System.Globalization;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Trends;

namespace CalibGeom.Cli.Trends;

/// <summary>The answer of trend, as text and as JSON.</summary>
internal static class TrendReport
{
    internal static void Write(TextWriter writer, TrendAnswer answer, IReadOnlyList<Finding> findings)
    {
        writer.WriteLine(findings[0].Message);
        if (findings[0].Remedy.Length > 0)
            writer.WriteLine(findings[0].Remedy);
        writer.WriteLine();
        FindingText.Write(writer, findings.Skip(1));
        writer.WriteLine();
        TextTable.Write(
            writer,
            [
                ["print", "day", "growth x mm", "growth y mm", "print-through mm", "column limit mm", "evidence"],
                .. answer.Log.Current.Read.Select((p, n) => Row(p, answer.Result.Evidence[n])),
            ]
        );
        writer.WriteLine("Evidence above 1 speaks for a change; above 3.3 it is more likely one than chance.");
    }

    internal static JsonObject Json(TrendAnswer answer)
    {
        TrendResult r = answer.Result;
        return new JsonObject
        {
            ["verdict"] = Word(answer.Verdict),
            ["coupons"] = r.Points.Count,
            ["wouldBeSeen"] = r.WouldBeSeen,
            ["moreCoupons"] = r.MoreCoupons,
            ["runLength"] = r.Options.RunLength,
            ["evidence"] = Numbers(r.Evidence),
            ["triggers"] = new JsonArray(
                answer
                    .Triggers.Select(t => (JsonNode)new JsonObject { ["rule"] = t.Rule, ["reason"] = t.Reason })
                    .ToArray()
            ),
            ["change"] = r.Change is { } change ? Change(change, r) : null,
            ["correction"] = answer.Correction is { } c
                ? new JsonObject
                {
                    ["time"] = c.Settings.Time,
                    ["low"] = c.Low,
                    ["high"] = c.High,
                    ["rest"] = c.Settings.Rest,
                    ["edgeOffset"] = c.Settings.EdgeOffset,
                    ["probability"] = c.Probability,
                }
                : null,
            ["charts"] = new JsonArray(r.Charts.Select(Chart).ToArray()),
        };
    }

    private static JsonObject Change(TrendChange c, TrendResult r) =>
        new()
        {
            ["light"] = Amount(c.Light),
            ["growth"] = c.Growth is { } g ? Amount(g) : null,
            ["printThrough"] = c.PrintThrough is { } z ? Amount(z) : null,
            ["chanceProbability"] = c.ChanceProbability,
            ["lightProbability"] = c.LightProbability,
            ["driftProbability"] = c.DriftProbability,
            ["beyondProbability"] = c.BeyondProbability,
            ["since"] = Time(c.Since, r),
            ["crosses"] = c.Crosses is { } t ? Time(t, r) : null,
        };

    private static JsonNode Chart(GaugeCharts c) =>
        new JsonObject
        {
            ["name"] = c.Name,
            ["runLength"] = c.RunLength,
            ["coupons"] = new JsonArray(c.Coupons.Select(n => (JsonNode)n).ToArray()),
            ["points"] = Numbers(c.Points),
            ["pointLimit"] = c.Reach,
            ["ewma"] = Numbers(c.Ewma.Averages),
            ["ewmaLimit"] = c.Ewma.Settled.High,
            ["cusumHigh"] = Numbers(c.Cusum.High),
            ["cusumLow"] = Numbers(c.Cusum.Low),
            ["cusumLimit"] = c.Cusum.Limit,
        };

    private static JsonArray Numbers(IEnumerable<double> values) =>
        new(values.Select(v => (JsonNode)Math.Round(v, 6)).ToArray());

    private static JsonObject Amount(Amount a) =>
        new()
        {
            ["value"] = Math.Round(a.Value, 6),
            ["low"] = Math.Round(a.Low, 6),
            ["high"] = Math.Round(a.High, 6),
        };

    /// <summary>Days where the log is dated, else numbers of coupons from 0; null is far away.</summary>
    private static JsonObject Time(Amount a, TrendResult r)
    {
        JsonNode? At(double time) =>
            r.DayOf(time) is { } day ? day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
            : double.IsFinite(time) ? Math.Round(time, 3)
            : null;
        return new JsonObject
        {
            ["value"] = At(a.Value),
            ["low"] = At(a.Low),
            ["high"] = At(a.High),
        };
    }

    private static string[] Row(TrendPoint point, double evidence)
    {
        string Growth(char axis) => Mean(point, v => v.Gauge == Gauge.Growth && v.Series[0] == axis, x => x, "0.000");
        return
        [
            point.Name.Split(' ')[^1],
            point.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "-",
            Growth('x'),
            Growth('y'),
            Mean(point, v => v.Gauge == Gauge.PrintThrough, x => x, IsCounted(point) ? "0.00" : "0.000"),
            Mean(point, v => v.Gauge == Gauge.Columns, Math.Exp, "0.00"),
            evidence > 1e6 ? ">1000000" : evidence.ToString("0.00", CultureInfo.InvariantCulture),
        ];
    }

    // A comb tells print-through to a step, a bridge as finely as a caliper reads.
    private static bool IsCounted(TrendPoint point) =>
        point.Values.Any(v => v is { Gauge: Gauge.PrintThrough, Counted: true });

    private static string Mean(TrendPoint point, Func<GaugeValue, bool> which, Func<double, double> show, string format)
    {
        double[] values = point.Values.Where(which).Select(v => v.Value).ToArray();
        return values.Length == 0 ? "-" : show(values.Average()).ToString(format, CultureInfo.InvariantCulture);
    }

    private static string Word(TrendVerdict verdict) =>
        verdict switch
        {
            TrendVerdict.NotSeenToMove => "not-seen-to-move",
            TrendVerdict.Drifting => "drifting",
            TrendVerdict.Recalibrate => "recalibrate",
            _ => "not-enough-data",
        };
}
