using System.Globalization;
using System.Text.RegularExpressions;
using CalibGeom.Cli.Shared;
using CalibGeom.Cli.Shared.Terminals;

namespace CalibGeom.Cli.Tests.Terminals;

public class ProgressBarTests
{
    /// <summary>
    /// With a clock on which everything takes long, a bar is drawn while reading, for the surface and for the layers,
    /// and wiped away.
    /// </summary>
    [Fact]
    public void ATerminalSeesProgressThroughAllOfTheWork()
    {
        using var folder = new TemporaryFolder();
        CliRun.Of("make", "--object", "witness", "-o", folder["a.obj"]);
        using var error = new StringWriter();
        CommandIo io = Io(error, new SlowClock());
        Assert.Equal(ExitCode.Done, CommandHost.Run(["inspect", folder["a.obj"], "--layer", "0.1"], io));
        int[] shown =
        [
            .. Regex
                .Matches(error.ToString(), "(\\d+)%")
                .Select(m => int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)),
        ];
        Assert.Equal(shown.Order(), shown);
        Assert.Contains(shown, filled => filled < 15);
        Assert.True(shown.Count(filled => filled is > 15 and < 50) > 1);
        Assert.True(shown.Count(filled => filled > 50) > 10);
        // Wiped away, and the cursor is back.
        Assert.EndsWith("\u001b[2K\u001b[?25h", error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void WorkOfUnderASecondDrawsNothing()
    {
        using var error = new StringWriter();
        using (ProgressBar bar = ProgressBar.For(Io(error, new StillClock()), "work")!)
            bar.Report("a part", 0.5);
        Assert.Equal("", error.ToString());
    }

    private sealed class StillClock : TimeProvider
    {
        public override long GetTimestamp() => 0;
    }

    [Fact]
    public void AnEscapeInANameIsShownAndNotObeyed()
    {
        using var error = new StringWriter();
        using (ProgressBar bar = ProgressBar.For(Io(error, new SlowClock()), "work")!)
            bar.Report("[red]x\u001b[2Jy\nz", 0.5);
        Assert.Contains("[red]x\\u001B[2Jy z", error.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("\u001b[2J", error.ToString(), StringComparison.Ordinal);
    }

    private static CommandIo Io(TextWriter error, TimeProvider clock) =>
        new()
        {
            Out = TextWriter.Null,
            Error = error,
            OpenInput = () => Stream.Null,
            OpenOutput = () => Stream.Null,
            Interactive = true,
            Clock = clock,
        };
}
