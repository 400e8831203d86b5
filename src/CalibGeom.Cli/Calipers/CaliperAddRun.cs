using System.Text;
using CalibGeom.Cli.Shared;
using CalibGeom.Features.Files;
using CalibGeom.Verification.Calipers;

namespace CalibGeom.Cli.Calipers;

/// <summary>Adds readings to a caliper record: all of them or, when one cannot be used, none.</summary>
internal sealed class CaliperAddRun(CommandIo io, string path)
{
    internal required IReadOnlyList<string> Readings { get; init; }

    internal required string Jaw { get; init; }

    internal required string? Gauge { get; init; }

    internal required string Part { get; init; }

    internal required string Person { get; init; }

    internal required string Date { get; init; }

    internal required string? Name { get; init; }

    internal required int? Valid { get; init; }

    internal required bool Json { get; init; }

    internal int Run()
    {
        if (Gauge is null == (Part.Trim().Length == 0))
            throw new InputException(
                "Say what was read: --gauge MM for a gauge, or --part NAME for a part of a study."
            );
        string before = File.Exists(path)
            ? InputBytes.TextOf(path, ReaderLimits.CaliperRecordBytes, "a caliper record")
            : "";
        if (before.Length > 0)
            CaliperRecordFile.Parse(before, path);
        if (before.Length > 0 && (Name is not null || Valid is not null))
            throw new InputException(
                $"{path} exists: its name and validity stand in it. Leave --name and --valid out."
            );
        string after = After(before);
        CaliperRecord record = CaliperRecordFile.Parse(after, path);
        using (var outputs = new OutputSet())
        {
            outputs.Add(path, s => s.Write(Encoding.UTF8.GetBytes(after)));
            outputs.Commit();
        }
        io.Say(
            $"{(Readings.Count == 1 ? "One reading" : $"{Readings.Count} readings")} added to {path}; it holds {record.Readings.Count}."
        );
        if (Json)
            Envelope.Write(io.Out, "caliper add", [], CaliperReport.Json(record));
        else
            CaliperReport.Write(io.Out, record);
        return ExitCode.Done;
    }

    private string After(string before)
    {
        try
        {
            // The rows are read as those of a file are, so that a slip is told in the same words.
            IReadOnlyList<CaliperReading> rows = Readings
                .Select(r => CaliperRecordFile.Reading([Date, Jaw, Gauge ?? "", r, Part, Person]))
                .ToArray();
            return CaliperRecordFile.Append(before, rows, Name ?? "", Valid ?? CaliperRecord.DefaultValidDays);
        }
        catch (ArgumentException e)
        {
            throw InputException.Because(e);
        }
    }
}
