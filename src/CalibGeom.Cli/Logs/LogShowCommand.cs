using System.CommandLine;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Logs;

namespace CalibGeom.Cli.Logs;

/// <summary><c>calibgeom log show</c>: the prints of a log as a table.</summary>
internal static class LogShowCommand
{
    internal static Command Build(CommandIo io)
    {
        var path = new Argument<string>("LOG") { Description = "The log; - is standard input." };
        var all = new Option<bool>("--all") { Description = "Prints that were taken back too." };
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope instead of text." };
        var command = new Command(
            "show",
            """
            Show the prints of a log: settings, what was measured, conditions.

            Example:
              calibgeom log show demo-grey.jsonl
            """
        );
        command.Arguments.Add(path);
        command.Options.Add(all);
        command.Options.Add(json);
        command.SetAction(parsed =>
        {
            TrialLog log = LogInput.Read(io, parsed.GetValue(path)!);
            LogEntry[] entries = log.Entries.Where(e => !e.TakenBack || parsed.GetValue(all)).ToArray();
            if (parsed.GetValue(json))
                Envelope.Write(
                    io.Out,
                    "log show",
                    log.Findings,
                    new JsonObject { ["trials"] = new JsonArray(entries.Select(Describe).ToArray()) }
                );
            else
                LogTable.Write(io.Out, entries, log.Findings);
            return ExitCode.Done;
        });
        return command;
    }

    private static JsonNode Describe(LogEntry entry) =>
        new JsonObject
        {
            ["number"] = entry.Number,
            ["takenBack"] = entry.TakenBack,
            ["trial"] = JsonNode.Parse(TrialLog.ToLine(entry.Trial)),
        };
}
