using System.Text;
using System.Text.Json.Nodes;

namespace CalibGeom.Cli.Tests;

public class MapCommandTests
{
    private static CliRun Map(string log, params string[] more) =>
        CliRun.With(Encoding.UTF8.GetBytes(log), ["map", "-", .. more]);

    [Fact]
    public void UnevenLightIsOneAnswerWithTheDarkCorner()
    {
        CliRun run = Map(DemoLogs.Plate(0.4), "--for", "20/20.2", "--at", "40,20");
        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        Assert.StartsWith("The light differs over the plate", run.Out, StringComparison.Ordinal);
        Assert.Contains("back right", run.Out, StringComparison.Ordinal);
        Assert.Contains("A 20 mm peg in a 20.2 mm hole at that place", run.Out, StringComparison.Ordinal);
        JsonNode json = JsonNode.Parse(Map(DemoLogs.Plate(0.4), "--json").Out)!;
        Assert.True((bool)json["result"]!["differs"]!);
        Assert.Equal(75, (double)json["result"]!["weakest"]!["x"]!);
        Assert.Equal(45, (double)json["result"]!["weakest"]!["y"]!);
        Assert.Equal(5, json["result"]!["places"]!.AsArray().Count);
    }

    [Fact]
    public void EvenLightIsSaidWithWhatCouldHide()
    {
        CliRun run = Map(DemoLogs.Plate(0));
        Assert.Equal(0, run.ExitCode);
        Assert.StartsWith("No difference over the plate is seen in 5 coupons.", run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Weakest", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void PictureAndGridAreWritten()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(0, Map(DemoLogs.Plate(0.4), "--plot", folder["m.svg"], "--grid", folder["m.csv"]).ExitCode);
        Assert.Contains("<svg", File.ReadAllText(folder["m.svg"]), StringComparison.Ordinal);
        Assert.StartsWith("x,y,light,mask\n", File.ReadAllText(folder["m.csv"]), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("place", 0.0, 1)]
    [InlineData("--for", 0.0, 0, "--for", "20")]
    [InlineData("--at", 0.0, 0, "--for", "20/20.2", "--at", "here")]
    [InlineData("off the plate", 0.0, 0, "--for", "20/20.2", "--at", "100,0")]
    [InlineData("--plate", 0.0, 0, "--plate", "big")]
    public void BadUseIsSaidInPlainWords(string about, double share, int unplaced, params string[] more)
    {
        CliRun run = Map(unplaced == 1 ? DemoLogs.Witness(0, 4) : DemoLogs.Plate(share), more);
        Assert.Equal(2, run.ExitCode);
        Assert.Equal("", run.Out);
        Assert.Contains(about, run.Error, StringComparison.Ordinal);
    }
}
