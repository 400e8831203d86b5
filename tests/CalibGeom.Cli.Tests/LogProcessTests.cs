using System.Diagnostics;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Logs;

namespace CalibGeom.Cli.Tests;

/// <summary>Processes that add to one log at once, as people at two computers do.</summary>
public class LogProcessTests
{
    [Fact]
    public async Task ProcessesThatAddAtOnceLoseNothing()
    {
        using var folder = new TemporaryFolder();
        double[] times = [2, 2.2, 2.4, 2.6];
        Process[] all =
        [
            .. times.Select(
                (time, i) =>
                    Start(
                        "log",
                        "add",
                        folder.Write($"print{i}.csv", $"feature,value\nbox1.outside.x,8.0{i}\nbox2.inside.x,8.08\n"),
                        "--to",
                        folder["log.jsonl"],
                        "--time",
                        FormattableString.Invariant($"{time}"),
                        "--rest",
                        "1"
                    )
            ),
        ];
        foreach (Process process in all)
        {
            string said = await process.StandardError.ReadToEndAsync();
            await process.WaitForExitAsync();
            Assert.True(process.ExitCode == ExitCode.Done, said);
            process.Dispose();
        }
        TrialLog log = TrialLog.Read(folder["log.jsonl"]);
        Assert.Empty(log.Findings);
        Assert.Equal(times, log.Trials.Select(t => t.Settings.Time).Order());
    }

    private static Process Start(params string[] args)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardError = true, RedirectStandardOutput = true };
        start.ArgumentList.Add(typeof(CommandHost).Assembly.Location);
        foreach (string arg in args)
            start.ArgumentList.Add(arg);
        return Process.Start(start)!;
    }
}
