using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Tests;

/// <summary>A design that cannot work ends with 1 and writes nothing.</summary>
public class DesignErrorTests
{
    [Theory]
    [InlineData("nest.sizes=16,8")]
    [InlineData("nest.sizes=8,8.2")]
    [InlineData("columns.pitch=0.6")]
    [InlineData("process.plate=20,20,20")]
    [InlineData("tilt.angle=45")]
    public void WritesNothing(string assignment)
    {
        using var folder = new TemporaryFolder();
        folder.Write("out.stl", "as it was");
        CliRun run = CliRun.Of("make", "--set", assignment, "-o", folder["out.stl"], "--force");
        Assert.Equal(ExitCode.Finding, run.ExitCode);
        Assert.Contains("error [", run.Out, StringComparison.Ordinal);
        Assert.Contains("nothing was written", run.Error, StringComparison.Ordinal);
        Assert.Equal("as it was", File.ReadAllText(Assert.Single(Directory.GetFiles(folder.Root))));
    }

    [Fact]
    public void CheckSaysTheSameAndJsonCarriesIt()
    {
        CliRun run = CliRun.Of("make", "--set", "nest.sizes=16,8", "--check", "--json");
        Assert.Equal(ExitCode.Finding, run.ExitCode);
        JsonNode envelope = JsonNode.Parse(run.Out)!;
        Assert.Contains(envelope["findings"]!.AsArray(), f => (string?)f!["severity"] == "error");
        Assert.Empty(envelope["result"]!["files"]!.AsArray());
        Assert.Equal(ExitCode.Done, CliRun.Of("make", "--check").ExitCode);
    }

    [Fact]
    public void StandardOutputStaysEmptyWhenItWouldCarryTheMesh()
    {
        CliRun run = CliRun.Of("make", "--set", "nest.sizes=16,8", "-o", "-");
        Assert.Equal(ExitCode.Finding, run.ExitCode);
        Assert.Empty(run.Out);
        Assert.Empty(run.Bytes);
        Assert.Contains("error [", run.Error, StringComparison.Ordinal);
    }
}
