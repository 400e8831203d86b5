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
}
