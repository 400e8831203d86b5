using System.Text;
using System.Text.Json.Nodes;

namespace CalibGeom.Cli.Tests;

public class TrendCommandTests
{
    private static CliRun Trend(string log, params string[] more) =>
        CliRun.With(Encoding.UTF8.GetBytes(log), ["trend", "-", .. more]);

    [Fact]
    public void FallingLightIsAnswerOneWithTheExposureThatGivesItBack()
    {
        CliRun run = Trend(DemoLogs.Witness(0.04));
        Assert.Equal((1, ""), (run.ExitCode, run.Error));
        Assert.StartsWith("Recalibrate now.", run.Out, StringComparison.Ordinal);
        Assert.Contains("instead of 2.5 s gives the dose back", run.Out, StringComparison.Ordinal);
        JsonNode json = JsonNode.Parse(Trend(DemoLogs.Witness(0.04), "--json").Out)!;
        Assert.Equal("trend", (string)json["command"]!);
        Assert.Equal("recalibrate", (string)json["result"]!["verdict"]!);
        double light = (double)json["result"]!["change"]!["light"]!["value"]!;
        Assert.InRange(light, -0.65, -0.10);
        Assert.InRange((double)json["result"]!["correction"]!["time"]!, 2.5 / 0.9, 2.5 / 0.3);
        Assert.StartsWith("2026-", (string)json["result"]!["change"]!["since"]!["value"]!, StringComparison.Ordinal);
    }

    [Fact]
    public void SteadyLightIsAnswerZero()
    {
        CliRun run = Trend(DemoLogs.Witness(0));
        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        Assert.StartsWith("Not seen to move: 16 coupons.", run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Instead of", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void ATornLastLineLosesNothingElse()
    {
        string log = DemoLogs.Witness(0);
        CliRun run = Trend(log[..^40]);
        Assert.Equal(0, run.ExitCode);
        Assert.StartsWith("Not seen to move: 15 coupons.", run.Out, StringComparison.Ordinal);
        Assert.Contains("cut off", run.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("no print", "")]
    [InlineData("run length", "LOG", "--run-length", "1")]
    [InlineData("light tolerance", "LOG", "--light-tolerance", "100")]
    [InlineData("baseline", "LOG", "--baseline", "0")]
    [InlineData("months", "LOG", "--months", "-1")]
    [InlineData("picture", "LOG", "--plot", "x.gif")]
    public void BadUseIsSaidInPlainWords(string about, string log, params string[] more)
    {
        CliRun run = Trend(log.Length == 0 ? "" : DemoLogs.Witness(0, 4), more);
        Assert.Equal(2, run.ExitCode);
        Assert.Equal("", run.Out);
        Assert.NotEqual("", run.Error);
        Assert.DoesNotContain("Parameter", run.Error, StringComparison.Ordinal);
        Assert.True(about == "picture" || run.Error.Contains(about, StringComparison.OrdinalIgnoreCase), run.Error);
    }

    [Fact]
    public void APictureIsDrawn()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(1, Trend(DemoLogs.Witness(0.04), "--plot", folder["t.png"]).ExitCode);
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], File.ReadAllBytes(folder["t.png"])[..4]);
    }
}
