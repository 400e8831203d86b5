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
}
