using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Tests;

/// <summary>A print that is added and taken back leaves the advice as it was, to the last digit.</summary>
public class LogUndoTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void TuneSaysTheSameAfterAddAndUndo(int prints)
    {
        using var folder = new TemporaryFolder();
        string log = folder["log.jsonl"];
        for (int i = 0; i < prints; i++)
            Add(folder, log, i, 2.5 + 0.1 * i);
        string before = Tune(log);
        Add(folder, log, 9, 3.1);
        Assert.NotEqual(before, Tune(log));
        Assert.Equal(ExitCode.Done, CliRun.Of("log", "undo", log).ExitCode);
        Assert.Equal(before, Tune(log));
    }

    private static string Tune(string log)
    {
        CliRun run = CliRun.Of("tune", log, "--json");
        Assert.True(run.ExitCode == ExitCode.Done, run.Error);
        return run.Out;
    }

    private static void Add(TemporaryFolder folder, string log, int print, double time)
    {
        string readings = folder.Write(
            "print.csv",
            FormattableString.Invariant(
                $"feature,value\nbox1.outside.x,{8.02 + 0.003 * print}\nbox2.inside.x,8.07\nbox1.outside.y,8.03\nslots.open,7\n"
            )
        );
        string[] settings = ["--time", FormattableString.Invariant($"{time}"), "--rest", "1", "--date", "2026-03-01"];
        CliRun run = CliRun.Of(["log", "add", readings, "--to", log, .. settings]);
        Assert.True(run.ExitCode == ExitCode.Done, run.Error);
    }
}
