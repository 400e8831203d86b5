using System.CommandLine;

namespace CalibGeom.Cli.Shared;

/// <summary><c>calibgeom help CMD</c>: the same as <c>calibgeom CMD --help</c>.</summary>
internal static class HelpCommand
{
    private const string Name = "help";

    internal static Command Build() => new(Name, "Help on a command: calibgeom help make.");

    /// <summary>The command line that asks the command itself for its help.</summary>
    internal static string[] Rewrite(string[] args) => args is [Name, .. var words] ? [.. words, "--help"] : args;
}
