using System.Globalization;
using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Tests;

/// <summary>Numbers on the command line: the same on every machine, refused in plain words.</summary>
public class PlainOptionsTests
{
    private const string Simulate = "simulate --object witness --dp 0.12 --ec 8 --irradiance 4";

    [Theory]
    [InlineData(
        Simulate + " --time 2,5",
        "--time 2,5 cannot be read. Write a number with a decimal point, such as 0.05."
    )]
    [InlineData(Simulate + " --time abc", "--time abc cannot be read.")]
    [InlineData(
        Simulate + " --time 2.5 --pixel 0.35x",
        "--pixel 0.35x cannot be read: \"0.35x\" is not a number from 0.005 to 0.5."
    )]
    [InlineData(Simulate + " --time 2.5 --layer 0,05", "--layer 0,05 cannot be read.")]
    [InlineData(Simulate + " --time 2.5 --base-layers 1.5", "--base-layers 1.5 cannot be read. Write a whole number.")]
    [InlineData(Simulate + " --time 2.5 --seed -1", "--seed -1 cannot be read. Write a whole number from 0 on.")]
    [InlineData(Simulate + " --time 2.5 --repeats 0", "--repeats must be 1 to 20, not 0.")]
    [InlineData(Simulate + " --time 2.5 --nope 3", "There is no option --nope here.")]
    [InlineData("tune log.jsonl --target 0,02", "--target 0,02 cannot be read.")]
    [InlineData("log add readings.csv --to log.jsonl --time 2,5 --rest 1", "--time 2,5 cannot be read.")]
    [InlineData("inspect part.stl --layer 0,05", "--layer 0,05 cannot be read.")]
    [InlineData(
        "predict readings.csv --pixel 0,05",
        "--pixel 0,05 cannot be read: \"0\" is not a number from 0.005 to 1."
    )]
    public void SaysWhatCannotBeRead(string line, string message)
    {
        CliRun run = CliRun.Of(line.Split(' '));
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("System.", run.Error, StringComparison.Ordinal);
        Assert.Single(run.Error.TrimEnd().Split('\n'));
        Assert.Empty(run.Out);
    }

    [Fact]
    public void ADecimalPointIsOneInEveryCulture()
    {
        string[] line = $"{Simulate} --time 2.5 --seed 7 --base-layers 6".Split(' ');
        CliRun here = CliRun.Of(line);
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            foreach (CultureInfo culture in new[] { new CultureInfo("de-DE"), new FailingCulture() })
            {
                CultureInfo.CurrentCulture = culture;
                CliRun there = CliRun.Of(line);
                Assert.Equal(ExitCode.Done, there.ExitCode);
                Assert.Equal(here.Error, there.Error);
                Assert.Equal(here.Out, there.Out);
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
