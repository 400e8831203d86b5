using System.Globalization;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Cli.Logs;

/// <summary>The prints of a log as a table, and what all of them have in common above it.</summary>
internal static class LogTable
{
    private static readonly string[] Heads =
    [
        "trial",
        "date",
        "exposure s",
        "rest s",
        "offset mm",
        "growth X mm",
        "growth Y mm",
        "fits",
        "columns",
        "slots open",
        "vat C",
    ];

    internal static void Write(TextWriter writer, IReadOnlyList<LogEntry> entries, IEnumerable<Finding> findings)
    {
        if (entries.Count == 0)
        {
            writer.WriteLine("No print counts in this log; --all shows those that were taken back.");
            FindingText.Write(writer, findings);
            return;
        }
        string[] conditions = entries.Select(e => Conditions(e.Trial)).Distinct().ToArray();
        if (conditions.Length == 1)
            writer.WriteLine(conditions[0]);
        string[] heads = conditions.Length > 1 ? [.. Heads, "conditions"] : Heads;
        string[][] rows = entries
            .Select(e => conditions.Length > 1 ? [.. Row(e), Conditions(e.Trial)] : Row(e))
            .ToArray();
        TextTable.WriteLeft(writer, [heads, .. rows]);
        double shared = entries.SelectMany(Biases).DefaultIfEmpty().Max();
        if (shared > 0)
            writer.WriteLine(
                Text(
                    $"+-: what one print shows by itself (95 %); what the caliper may be off in all of them, up to {Coverage.NormalFactor * shared:0.000} mm, is not in it"
                )
            );
        FindingText.Write(writer, findings);
    }

    private static IEnumerable<double> Biases(LogEntry entry) =>
        new[] { entry.Trial.GrowthX, entry.Trial.GrowthY }.OfType<GrowthReading>().Select(g => g.Bias);

    private static string[] Row(LogEntry entry)
    {
        Trial t = entry.Trial;
        return
        [
            entry.Number.ToString(CultureInfo.InvariantCulture) + (entry.TakenBack ? " (taken back)" : ""),
            t.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "-",
            Text($"{t.Settings.Time:0.##}"),
            Text($"{t.Settings.Rest:0.##}"),
            Text($"{t.Settings.EdgeOffset:0.###}"),
            Growth(t.GrowthX),
            Growth(t.GrowthY),
            t.Joints.Any(j => j.Fit is not null)
                ? string.Join(' ', t.Joints.Select(j => j.Fit is { } fit ? ReadingWords.Of(fit) : "-"))
                : "-",
            t.Columns.Count > 0 ? $"{t.Columns.Count(c => c.Printed)} of {t.Columns.Count}" : "-",
            t.Slots is { } slots ? $"{slots.Open} of {slots.Heights.Count}" : "-",
            t.Conditions.Temperature is { } vat ? Text($"{vat:0.#}") : "-",
        ];
    }

    private static string Growth(GrowthReading? growth) =>
        growth is null ? "-" : Text($"{growth.Value:0.000} +- {Coverage.NormalFactor * growth.Uncertainty:0.000}");

    private static string Conditions(Trial trial)
    {
        TrialConditions c = trial.Conditions;
        string[] words =
        [
            c.Resin,
            c.Printer,
            Text($"layer {c.Layer} mm"),
            Named("bottle", c.Bottle),
            Named("film", c.Film),
            Named("screen", c.Screen),
            c.GreyLevels ? "grey levels" : "",
            trial.Pixel is { } pixel ? Text($"pixel {pixel} mm") : "",
            c.Orientation != 0 ? $"turned {c.Orientation} degrees" : "",
            trial.Place is { Label.Length: > 0 } place ? $"coupon {place.Label}" : "",
            Text($"base {trial.Cycle.BaseLayers} x {trial.Cycle.BaseTime} s"),
        ];
        return string.Join(", ", words.Where(w => w.Length > 0));
    }

    private static string Named(string what, string name) => name.Length > 0 ? $"{what} {name}" : "";

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
