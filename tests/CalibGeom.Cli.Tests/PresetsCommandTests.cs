using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Tests;

public class PresetsCommandTests
{
    public static TheoryData<string> PresetNames => [.. Presets.All.Select(p => p.Name)];

    [Fact]
    public void ListsThem()
    {
        CliRun run = CliRun.Of("presets");
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Equal(
            Presets.All.Select(p => p.Name),
            run.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split(' ')[0])
        );
    }

    [Theory]
    [MemberData(nameof(PresetNames))]
    public void PrintsOneThatIsReadBackIdentically(string name)
    {
        CliRun run = CliRun.Of("presets", name);
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Equal(Presets.Find(name)!.Spec, SpecJson.Parse(run.Out));
        Assert.StartsWith($"// Preset {name}.", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void SpeaksJson()
    {
        JsonNode list = JsonNode.Parse(CliRun.Of("presets", "--json").Out)!;
        Assert.Equal("presets", (string?)list["command"]);
        Assert.Equal(Presets.All.Count, list["result"]!["presets"]!.AsArray().Count);
        JsonNode one = JsonNode.Parse(CliRun.Of("presets", "witness", "--json").Out)!;
        Assert.Equal(Presets.Witness, SpecJson.Parse(one["result"]!["spec"]!.ToJsonString()));
    }
}
