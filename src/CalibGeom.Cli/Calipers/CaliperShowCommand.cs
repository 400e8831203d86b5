using System.CommandLine;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Calipers;

namespace CalibGeom.Cli.Calipers;

/// <summary><c>calibgeom caliper show</c>: what a caliper record says.</summary>
internal static class CaliperShowCommand
{
    internal static Command Build(CommandIo io)
    {
        var path = new Argument<string>("RECORD")
        {
            Description = "A caliper record, CSV: date,jaw,gauge,reading,part,person.",
        };
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope instead of text." };
        var command = new Command(
            "show",
            """
            Say what a record tells of a caliper: the error all lengths share, how it swings along the scale, repeatability and reproducibility.

            Exit codes: 0 answered, 2 bad use or a record that cannot be used.

            Example:
              calibgeom caliper show cal.caliper.csv
            """
        );
        command.Arguments.Add(path);
        command.Options.Add(json);
        command.SetAction(parsed =>
        {
            string file = parsed.GetValue(path)!;
            WrongFile.RequireNoOther(file, InputKind.Caliper);
            CaliperRecord record = CaliperRecordFile.Read(file);
            Finding[] findings = CaliperRecords.Age(file, record, io.Today) is { } old ? [old] : [];
            if (parsed.GetValue(json))
                Envelope.Write(io.Out, "caliper show", findings, CaliperReport.Json(record));
            else
            {
                FindingText.Write(io.Out, findings);
                CaliperReport.Write(io.Out, record);
            }
            return ExitCode.Done;
        });
        return command;
    }
}
