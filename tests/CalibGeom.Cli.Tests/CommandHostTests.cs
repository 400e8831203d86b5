using System.CommandLine;
using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Tests;

public class CommandHostTests
{
    [Fact]
    public void AnUnknownCommandIsBadUse()
    {
        CliRun run = CliRun.Of("frobnicate");
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Empty(run.Out);
        Assert.Contains("frobnicate", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AnErrorNamesTheWholeCommand() =>
        Assert.StartsWith(
            "calibgeom log add: ",
            CliRun.Of("log", "add", "nowhere.csv", "--to", "x.jsonl", "--time", "2", "--rest", "1").Error,
            StringComparison.Ordinal
        );

    /// <summary>What a script may get back stands in the help of every command that does something.</summary>
    [Fact]
    public void HelpTellsEveryExitCode()
    {
        var io = new CommandIo
        {
            Out = TextWriter.Null,
            Error = TextWriter.Null,
            OpenInput = () => Stream.Null,
            OpenOutput = () => Stream.Null,
        };
        string[][] all = [.. Leaves(CommandHost.BuildRoot(io), [])];
        Assert.True(all.Length > 15, $"{all.Length} commands");
        foreach (string[] words in all)
        {
            string help = CliRun.Of([.. words, "--help"]).Out;
            Assert.Matches(
                @"\nExit codes:\r?\n  0 [^\n]*2 [^\n]+\r?\n  3 a fault of the program[^\n]*, 4 all files are written",
                help
            );
            Assert.Equal(2, help.Split("Exit codes:").Length);
        }
    }

    private static IEnumerable<string[]> Leaves(Command command, string[] path) =>
        command.Subcommands.Count == 0
            ? [path]
            : command.Subcommands.SelectMany(c => Leaves(c, [.. path, c.Name])).Where(p => p is not ["help"]);
}
