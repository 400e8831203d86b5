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

    [Fact]
    public void AFaultOfTheProgramIsToldAsOneAndIsNoBadUse()
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var io = new CommandIo
        {
            Out = output,
            Error = error,
            OpenInput = () => throw new InvalidOperationException("The tape is torn."),
            OpenOutput = () => Stream.Null,
        };
        Assert.Equal(ExitCode.Fault, CommandHost.Run(["make", "--object", "-", "--json"], io));
        Assert.StartsWith(
            "calibgeom make: This is a fault of the program, not of what you gave it: The tape is torn.",
            error.ToString(),
            StringComparison.Ordinal
        );
        Assert.Contains("make --object -", error.ToString(), StringComparison.Ordinal);
        Assert.Contains("\"program-fault\"", output.ToString(), StringComparison.Ordinal);
    }
}
