using CalibGeom.Cli.Shared;
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
                InputIds.Option,
                "Say what was read: --gauge MM for a gauge, or --part NAME for a part of a study."
            );
        WrongFile.RequireNoOther(path, InputKind.Caliper);
        CaliperRecord record = Add();
        io.Say(
            $"{(Readings.Count == 1 ? "One reading" : $"{Readings.Count} readings")} added to {path}; it holds {record.Readings.Count}."
        );
        if (Json)
            Envelope.Write(io.Out, "caliper add", [], CaliperReport.Json(record));
        else
            CaliperReport.Write(io.Out, record);
        return ExitCode.Done;
    }

    private CaliperRecord Add()
    {
        try
        {
            // The rows are read as those of a file are, so that a slip is told in the same words.
            CaliperReading[] rows =
            [
                .. Readings.Select(r => CaliperRecordFile.ParseReading([Date, Jaw, Gauge ?? "", r, Part, Person])),
            ];
            CaliperRecord record = CaliperRecordFile.Append(path, rows, Name, Valid);
            io.Written();
            return record;
        }
        catch (ArgumentException e)
        {
            throw InputException.Because(InputIds.Option, e);
        }
    }
}
