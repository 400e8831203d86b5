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
}
