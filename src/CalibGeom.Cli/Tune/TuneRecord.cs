using CalibGeom.Cli.Shared;
using CalibGeom.Features.Files;
using CalibGeom.Pictures.Reports;
using CalibGeom.Pictures.Tuning;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Cli.Tune;

/// <summary>The answer of <c>tune</c> as a page to file, and as a card for the machine.</summary>
internal static class TuneRecord
{
    /// <summary>Adds the page.</summary>
    internal static void AddReport(OutputSet files, string path, string log, TuningResult result)
    {
        using var text = new StringWriter();
        TuneReport.Write(text, result);
        var page = new ReportPage
        {
            Title = $"Settings for {result.Conditions.Resin} on {result.Conditions.Printer}",
            Answer = RecordFile.Sentences(result.Findings[0]),
            ToType = ToType(result),
            Findings = [.. result.Findings.Skip(1)],
            Plots =
            [
                ExposurePlot.Draw(result),
                .. result.Columns is null ? [] : new[] { ColumnPlot.Draw(result) },
                HistoryPlot.Draw(result),
            ],
            Tables = [new ReportText("In full", text.ToString().TrimEnd())],
            Inputs = RecordFile.Contents([log]),
            Version = Envelope.Version,
        };
        files.Add(path, page.Write);
    }

    /// <summary>Adds the card: the settings that are advised, and what they are expected to give.</summary>
    internal static void AddCard(OutputSet files, string path, TuningResult result)
    {
        var c = result.Conditions;
        var card = new SettingsCard
        {
            Resin = c.Resin.Length > 0 ? c.Resin : "resin ________",
            Printer = c.Printer.Length > 0 ? c.Printer : "printer ________",
            Settings = [.. ToType(result), new("layer height", FormattableString.Invariant($"{c.Layer:0.###} mm"))],
            Results =
            [
                new(
                    "vat temperature",
                    c.Temperature is { } t ? FormattableString.Invariant($"{t:0.#} \u00b0C") : "________"
                ),
                .. Tuner
                    .ChancesAt(result, result.Next.Settings)
                    .Take(3)
                    .Select(j => new KeyValuePair<string, string>(
                        $"{j.Joint} {j.Axis.ToUpperInvariant()}",
                        FormattableString.Invariant(
                            $"{j.Clearance:0.000} \u00b1 {Coverage.NormalFactor * j.Uncertainty:0.000} mm"
                        )
                    )),
                .. Thinnest(result),
            ],
        };
        files.Add(path, stream => card.Draw().Write(path, stream));
    }

    private static IEnumerable<KeyValuePair<string, string>> Thinnest(TuningResult result)
    {
        if (result.Columns?.Limit(result.Next.Settings.Time).Diameter is { } d)
            yield return new("half of columns stand at", FormattableString.Invariant($"{d:0.00} mm"));
    }

    // Without what must be off, which is no number to type.
    private static IReadOnlyList<KeyValuePair<string, string>> ToType(TuningResult result) =>
        [.. result.ToType.Lines.SkipLast(1).Select(l => new KeyValuePair<string, string>(l.Key.Trim(), l.Value))];
}
