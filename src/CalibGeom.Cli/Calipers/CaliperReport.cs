using System.Globalization;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Calipers;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Calipers;

/// <summary>What a caliper record says, as text and as JSON.</summary>
internal static class CaliperReport
{
    internal static void Write(TextWriter writer, CaliperRecord record)
    {
        writer.WriteLine(record.Name.Length > 0 ? $"caliper {record.Name}" : "caliper without a name");
        List<string[]> rows =
        [
            ["jaws, mm", "constant error", "+-", "swing", "lengths", "days", "drift"],
        ];
        foreach (JawCheck j in record.Jaws)
            rows.Add([
                ReadingWords.Of(j.Jaw),
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
        else if (record.Readings.Any(r => r.Part.Length > 0))
            writer.WriteLine(
                $"no repeatability yet: every person reads every part equally often, two times at least; so far {Reads(record)}"
            );
    }

    /// <summary>How often each person read each part.</summary>
    private static string Reads(CaliperRecord record) =>
        string.Join(
            ", ",
            record
                .Readings.Where(r => r.Part.Length > 0)
                .GroupBy(r => (r.Part, r.Person))
                .Select(g => $"{g.Key.Part}{(g.Key.Person.Length > 0 ? $" by {g.Key.Person}" : "")} {g.Count()}")
        );

    internal static JsonObject Json(CaliperRecord record) =>
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
                            ["jaw"] = ReadingWords.Of(j.Jaw),
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
