using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Tests;

/// <summary>A word without a letter, as a script's empty variable leaves it, is bad use and no fault of ours.</summary>
public class EmptyWordTests
{
    [Theory]
    [InlineData("predict ~ --object standard")]
    [InlineData("predict r.csv ~ --object standard")]
    [InlineData("log show ~")]
    [InlineData("log undo ~")]
    [InlineData("log add ~ --to l.jsonl --time 2")]
    [InlineData("log add r.csv --to ~ --time 2")]
    [InlineData("inspect ~")]
    [InlineData("place ~ --plate 150x90 -o o.stl")]
    [InlineData("make --object ~ -o o.stl")]
    [InlineData("make -o ~")]
    [InlineData("readings --object ~")]
    [InlineData("draw --object ~")]
    [InlineData("tune ~")]
    [InlineData("trend ~")]
    [InlineData("map ~ --plate 150x90")]
    [InlineData("caliper add ~ 10.01 --jaw outside --gauge 10")]
    [InlineData("caliper show ~")]
    public void IsRefusedInWords(string line)
    {
        string[] words = [.. line.Split(' ').Select(w => w == "~" ? "" : w)];
        CliRun run = CliRun.With([], words);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("empty", run.Error, StringComparison.Ordinal);
        Assert.Single(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    /// <summary>No shell can pass one, a program that hosts the command line can.</summary>
    [Fact]
    public void AZeroByteIsRefusedInWords()
    {
        using StringWriter said = new(),
            error = new();
        var io = new CommandIo
        {
            Out = said,
            Error = error,
            OpenInput = () => Stream.Null,
            OpenOutput = () => Stream.Null,
        };
        Assert.Equal(2, CommandHost.Run(["map", "a\0b", "--plate", "150x90"], io));
        Assert.Contains("holds a zero byte at position 2", error.ToString(), StringComparison.Ordinal);
    }
}
