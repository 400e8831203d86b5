using System.CommandLine;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Logs;

/// <summary><c>calibgeom log add</c>: one more print in the log.</summary>
internal static class LogAddCommand
{
    internal static Command Build(CommandIo io)
    {
        var readings = new Argument<string>("READINGS")
        {
            Description = "Readings of the print, CSV or JSON; - is standard input.",
        };
        var log = new Option<string>("--to")
        {
            Description = "The log to append to; made when it does not exist.",
            HelpName = "LOG",
            Required = true,
        };
        var printed = new ObjectOption("the one whose digest the readings name, beside them or in the current folder");
        Option<string?> coupon = LogAddOptions.Text(
            "--coupon",
            "ID",
            "Only the readings of this coupon (A1 of A1/box1.outside.x)."
        );
        var again = new Option<bool>("--again")
        {
            Description = "The same readings once more: it was printed and measured again.",
        };
        var yes = new Option<bool>("--yes") { Description = "Unlikely settings and near-same names are meant." };
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope instead of text." };
        var said = new LogAddOptions();
        var command = new Command(
            "add",
            """
            Append one print to a log; nothing that stands in it is rewritten.

            What is not given is taken from the object's process, then from the last print of the log, and that is said.

            Example:
              calibgeom log add bench.csv --to demo-grey.jsonl --time 2.5 --rest 1 --resin "Demo grey" --printer bench
            """
        );
        command.Arguments.Add(readings);
        printed.AddTo(command);
        foreach (Option option in new Option[] { log, coupon, again, yes, json }.Concat(said.All))
            command.Options.Add(option);
        command.SetAction(parsed =>
        {
            string path = parsed.GetValue(readings)!;
            var files = new ReadingFiles(io, [path]);
            ReadingSet set = ReadingFiles.Of(files.Together(), parsed.GetValue(coupon));
            return new LogAddRun(io, set, printed.Find(io, parsed, set.Digest, [path]))
            {
                Path = parsed.GetValue(log)!,
                Records = files.Findings,
                Said = said.Read(parsed, io.Today),
                Again = parsed.GetValue(again),
                Yes = parsed.GetValue(yes),
                Json = parsed.GetValue(json),
            }.Run();
        });
        return command;
    }
}
