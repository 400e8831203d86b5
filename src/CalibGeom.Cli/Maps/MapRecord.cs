using CalibGeom.Cli.Shared;
using CalibGeom.Pictures.Maps;
using CalibGeom.Pictures.Reports;
using CalibGeom.Verification.Maps;

namespace CalibGeom.Cli.Maps;

/// <summary>The answer of <c>map</c> as a page to file.</summary>
internal static class MapRecord
{
    internal static ReportPage Page(
        IReadOnlyList<string> inputs,
        MapResult map,
        IReadOnlyList<Finding> findings,
        JointOverPlate? joint
    )
    {
        using var text = new StringWriter();
        MapReport.Write(text, map, findings, joint);
        return new ReportPage
        {
            Title = $"Light over the plate from {string.Join(", ", inputs.Select(RecordFile.NameOf))}",
            Answer = [.. RecordFile.Sentences(findings[0]), .. joint is null ? [] : new[] { joint.ToString() }],
            Findings = [.. findings.Skip(1)],
            Plots = [MapPlot.Draw(map)],
            Tables = [new ReportText("In full", text.ToString().TrimEnd())],
            Inputs = RecordFile.Contents(inputs),
            Version = Envelope.Version,
        };
    }
}
