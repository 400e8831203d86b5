using CalibGeom.Cli.Shared;
using CalibGeom.Pictures.Reports;
using CalibGeom.Pictures.Trends;
using CalibGeom.Verification.Trends;

namespace CalibGeom.Cli.Trends;

/// <summary>The answer of <c>trend</c> as a page to file.</summary>
internal static class TrendRecord
{
    internal static ReportPage Page(string log, TrendAnswer answer, IReadOnlyList<Finding> findings)
    {
        using var text = new StringWriter();
        TrendReport.Write(text, answer, findings);
        return new ReportPage
        {
            Title = $"Trend of {RecordFile.NameOf(log)}",
            Answer = RecordFile.Sentences(findings[0]),
            ToType = answer.Correction is { } c
                ? [new("exposure to confirm", FormattableString.Invariant($"{c.Settings.Time:0.##} s"))]
                : [],
            Findings = [.. findings.Skip(1)],
            Plots = [TrendPlot.Draw(answer)],
            Tables = [new ReportText("In full", text.ToString().TrimEnd())],
            Inputs = RecordFile.Contents([log]),
            Version = Envelope.Version,
        };
    }
}
