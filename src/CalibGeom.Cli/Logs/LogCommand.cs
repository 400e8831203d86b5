using System.CommandLine;
using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Logs;

/// <summary><c>calibgeom log</c>: the log of one machine and resin.</summary>
internal static class LogCommand
{
    internal static Command Build(CommandIo io)
    {
        var command = new Command(
            "log",
            """
            Keep the log of one machine and resin: add a print, show all prints, take one back.

            A log is a text file with one line a print, only ever appended to.

            Example:
              calibgeom log add bench.csv --to demo-grey.jsonl --time 2.5 --rest 1
              calibgeom log show demo-grey.jsonl
            """
        );
        command.Subcommands.Add(LogAddCommand.Build(io));
        command.Subcommands.Add(LogShowCommand.Build(io));
        command.Subcommands.Add(LogUndoCommand.Build(io));
        return command;
    }
}
