using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Calipers;

namespace CalibGeom.Cli.Calipers;

/// <summary><c>calibgeom caliper</c>: what a caliper record says.</summary>
internal static class CaliperCommand
{
    internal static Command Build(CommandIo io)
    {
        var path = new Argument<string>("RECORD")
        {
            Description = "A caliper record, CSV: date,jaw,gauge,reading,part,person.",
        };
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope instead of text." };
        var command = new Command(
            "caliper",
            """
            Say what readings of gauges and of a repeatability study tell of a caliper: the error all lengths share, how it swings along the scale, repeatability and reproducibility. A readings file names the record: # instrument cal record=cal.caliper.csv

            Exit codes: 0 answered, 2 bad use or a record that cannot be used.

            Example:
              calibgeom caliper cal.caliper.csv
            """
        );
        command.Arguments.Add(path);
        command.Options.Add(json);
        command.SetAction(parsed => Run(io, parsed.GetValue(path)!, parsed.GetValue(json)));
        return command;
    }

    private static int Run(CommandIo io, string path, bool json)
    {
        CaliperRecord record = CaliperRecordFile.Load(path);
        Finding[] findings = CaliperRecords.Age(path, record, DateOnly.FromDateTime(DateTime.Now)) is { } old
            ? [old]
            : [];
        if (json)
            Envelope.Write(io.Out, "caliper", findings, Describe(record));
        else
        {
            FindingText.Write(io.Out, findings);
            Write(io.Out, record);
        }
        return ExitCode.Done;
    }

    private static void Write(TextWriter writer, CaliperRecord record)
    {
        writer.WriteLine(record.Name.Length > 0 ? $"caliper {record.Name}" : "caliper without a name");
        List<string[]> rows =
        [
            ["jaws, mm", "constant error", "+-", "swing", "lengths", "days", "drift"],
        ];
        foreach (JawCheck j in record.Jaws)
            rows.Add([
                j.Jaw.ToString().ToLowerInvariant(),
                Number(j.Constant.Value),
                Number(j.Constant.Expanded),
                j.Swing is { } s ? Number(s) : "-",
                j.Lengths.ToString(CultureInfo.InvariantCulture),
                j.Days.ToString(CultureInfo.InvariantCulture),
                j.Drift is { } d ? Number(d) : "-",
            ]);
        if (record.Jaws.Count > 0)
            TextTable.Write(writer, rows);
        else
            writer.WriteLine("no gauge was read");
        if (record.Study is { } study)
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{study.Parts} parts, {study.Persons} persons, {study.Rounds} rounds: repeatability "
                        + $"{study.Repeatability:0.0000} mm ({study.DegreesOfFreedom} degrees of freedom), reproducibility "
                        + $"{study.Reproducibility:0.0000} mm, together {study.Together:0.0000} mm"
                )
            );
    }

    private static JsonObject Describe(CaliperRecord record) =>
        new()
        {
            ["name"] = record.Name,
            ["lastGauge"] = record.LastGauge?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            ["validDays"] = record.ValidDays,
            ["jaws"] = new JsonArray([
                .. record.Jaws.Select(j =>
                    (JsonNode)
                        new JsonObject
                        {
                            ["jaw"] = j.Jaw.ToString().ToLowerInvariant(),
                            ["constant"] = j.Constant.Value,
                            ["u"] = j.Constant.StandardUncertainty,
                            ["swing"] = j.Swing,
                            ["lengths"] = j.Lengths,
                            ["days"] = j.Days,
                            ["drift"] = j.Drift,
                        }
                ),
            ]),
            ["study"] = record.Study is { } s
                ? new JsonObject
                {
                    ["parts"] = s.Parts,
                    ["persons"] = s.Persons,
                    ["rounds"] = s.Rounds,
                    ["repeatability"] = s.Repeatability,
                    ["degreesOfFreedom"] = s.DegreesOfFreedom,
                    ["reproducibility"] = s.Reproducibility,
                    ["together"] = s.Together,
                }
                : null,
        };

    private static string Number(double mm) => mm.ToString("0.0000", CultureInfo.InvariantCulture);
}
