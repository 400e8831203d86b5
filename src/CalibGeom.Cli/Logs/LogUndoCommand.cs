using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Logs;

namespace CalibGeom.Cli.Logs;

/// <summary><c>calibgeom log undo</c>: takes a print back.</summary>
internal static class LogUndoCommand
{
    internal static Command Build(CommandIo io)
    {
        var path = new Argument<string>("LOG") { Description = "The log." };
        var trial = new Option<int?>("--trial")
        {
            Description = "The number of the trial, as log show tells it. Default: the last that holds.",
            HelpName = "N",
        };
        Option<string?> date = LogAddOptions.Text("--date", "DAY", "The day of this word. Default: today.");
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope instead of text." };
        var command = new Command(
            "undo",
            """
            Take a print back by appending a line that says so; nothing is rewritten.

            Example:
              calibgeom log undo demo-grey.jsonl
            """
        );
        command.Arguments.Add(path);
        command.Options.Add(trial);
        command.Options.Add(date);
        command.Options.Add(json);
        command.SetAction(parsed =>
        {
            DateOnly day = parsed.GetValue(date) is { } text ? LogAddOptions.Day(text) : io.Today;
            string log = parsed.GetValue(path)!;
            WrongFile.RequireNoOther(log, InputKind.Log);
            LogEntry gone = TrialLog.Undo(log, day, parsed.GetValue(trial));
            io.Written();
            if (parsed.GetValue(json))
                Envelope.Write(io.Out, "log undo", [], new JsonObject { ["log"] = log, ["number"] = gone.Number });
            else
                io.Out.WriteLine(Words(gone, log));
            return ExitCode.Done;
        });
        return command;
    }

    private static string Words(LogEntry gone, string log)
    {
        string day = gone.Trial.Date is { } date
            ? $" of {date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}"
            : "";
        return $"Trial {gone.Number}{day} ({gone.Trial.Settings}) no longer counts in {log}. Its line stays.";
    }
}
