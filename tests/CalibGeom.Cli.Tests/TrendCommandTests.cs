using System.Text;
using System.Text.Json.Nodes;
using CalibGeom.Verification.Logs;

namespace CalibGeom.Cli.Tests;

public class TrendCommandTests
{
    private static CliRun Trend(string log, params string[] more) =>
        CliRun.With(Encoding.UTF8.GetBytes(log), ["trend", "-", .. more]);

    [Fact]
    public void FallingLightIsAnswerOneWithTheExposureThatMakesUpForIt()
    {
        CliRun run = Trend(DemoLogs.Watched(0.04), "--tolerance", "0.03");
        Assert.Equal((1, ""), (run.ExitCode, run.Error));
        Assert.StartsWith("Recalibrate now.", run.Out, StringComparison.Ordinal);
        Assert.Contains(
            "instead of 2.5 s brings what was read back within its tolerance with ",
            run.Out,
            StringComparison.Ordinal
        );
        JsonNode json = JsonNode.Parse(Trend(DemoLogs.Watched(0.04), "--tolerance", "0.03", "--json").Out)!;
        Assert.Equal("trend", (string)json["command"]!);
        Assert.Equal("recalibrate", (string)json["result"]!["verdict"]!);
        double light = (double)json["result"]!["change"]!["light"]!["value"]!;
        Assert.InRange(light, -0.65, -0.10);
        JsonNode correction = json["result"]!["correction"]!;
        Assert.InRange((double)correction["time"]!, 2.5 / 0.9, 2.5 / 0.3);
        Assert.InRange((double)correction["probability"]!, 0.9, 1);
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

    /// <summary>A fall that may be chance is said with its probability, and is no finding.</summary>
    [Fact]
    public void WhatMayBeChanceIsNoFinding()
    {
        CliRun run = Trend(DemoLogs.Witness(0.04));
        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        Assert.StartsWith("Drifting, probably still within the tolerance (", run.Out, StringComparison.Ordinal);
        Assert.Contains("[trend-chance]", run.Out, StringComparison.Ordinal);
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
        Assert.Equal(1, Trend(DemoLogs.Watched(0.04), "--plot", folder["t.png"]).ExitCode);
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], File.ReadAllBytes(folder["t.png"])[..4]);
    }

    [Fact]
    public void AReportHoldsAnswerPictureAndInput()
    {
        using var folder = new TemporaryFolder();
        string log = folder.Write("demo-grey.jsonl", DemoLogs.Watched(0.04));
        CliRun run = CliRun.Of("trend", log, "--report", folder["trend.html"]);
        Assert.Equal(1, run.ExitCode);
        string page = File.ReadAllText(folder["trend.html"]);
        Assert.Contains("Recalibrate now.", page, StringComparison.Ordinal);
        Assert.Contains("<svg role=\"img\"", page, StringComparison.Ordinal);
        Assert.Contains("demo-grey.jsonl", page, StringComparison.Ordinal);
        Assert.Equal(2, CliRun.Of("trend", log, "--report", folder["trend.txt"]).ExitCode);
    }

    [Fact]
    public void ACalibrationInTheLogTellsHowGaugesAnswerToLight()
    {
        // Four exposures before the coupons: growth answers by 0.05 mm for a factor e.
        static string Line(double time, int day, double light) =>
            TrialLog.ToLine(
                new Trial(new ExposureSettings(time, 1), new TrialConditions(0.05, "Demo grey", "bench"))
                {
                    Date = new DateOnly(2026, 1, 1).AddDays(day),
                    Digest = "0123456789abcdef",
                    Instrument = "cal",
                    GrowthX = new GrowthReading(0.02 + 0.05 * Math.Log(time * light / 2.5), 0.0025, 0.0115),
                    GrowthY = new GrowthReading(0.02 + 0.05 * Math.Log(time * light / 2.5), 0.0025, 0.0115),
                }
            ) + "\n";
        string log = string.Concat(
            new[] { 1.6, 2, 3.2, 4, 2.5 }
                .Select((t, i) => Line(t, i, 1))
                .Concat(Enumerable.Range(1, 8).Select(i => Line(2.5, 7 * i, i < 3 ? 1 : Math.Pow(0.9, i - 2))))
        );
        JsonNode json = JsonNode.Parse(Trend(log, "--json").Out)!;
        JsonNode effects = json["findings"]!.AsArray().Single(f => (string)f!["rule"]! == "light-effects")!;
        // No comb was read, so that print-through's effect is not learnt.
        Assert.Contains(
            "How growth answers to light was learnt from 5 prints of this log, how print-through does is taken from",
            (string)effects["message"]!,
            StringComparison.Ordinal
        );
        // The light is 0.9^6 = 0.53 of the baseline's.
        JsonNode light = json["result"]!["change"]!["light"]!;
        Assert.InRange((double)light["low"]!, -0.75, -0.47);
        Assert.InRange((double)light["high"]!, -0.47, -0.2);
    }
}
