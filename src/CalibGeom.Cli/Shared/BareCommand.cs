using System.CommandLine;
using System.CommandLine.Parsing;

namespace CalibGeom.Cli.Shared;

/// <summary>
/// A command that does nothing alone, such as <c>calibgeom</c> or <c>calibgeom log</c>: what it can do, one line each.
/// </summary>
internal static class BareCommand
{
    /// <summary>The exit code when that was the question, else null.</summary>
    internal static int? Answer(ParseResult parsed, CommandIo io)
    {
        Command command = parsed.CommandResult.Command;
        if (command.Action is not null || command.Subcommands.Count == 0 || parsed.UnmatchedTokens.Count > 0)
            return null;
        if (parsed.Tokens.Any(t => t.Value.StartsWith('-') || t.Value.StartsWith('[')))
            return null;
        io.Out.WriteLine(FirstLine(command));
        io.Out.WriteLine();
        TextTable.WriteLeft(
            io.Out,
            command.Subcommands.Where(c => !c.Hidden).Select(c => new[] { "  " + c.Name, FirstLine(c) }).ToArray()
        );
        io.Out.WriteLine();
        io.Out.WriteLine($"More: {PathOf(parsed.CommandResult)} COMMAND --help");
        return ExitCode.Done;
    }

    /// <summary>A command with those above it, such as <c>calibgeom log</c>.</summary>
    internal static string PathOf(CommandResult result) =>
        result.Parent is CommandResult parent ? $"{PathOf(parent)} {result.Command.Name}" : "calibgeom";

    private static string FirstLine(Command command) => (command.Description ?? "").Split('\n')[0];
}
