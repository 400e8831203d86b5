using System.Text.RegularExpressions;
using CalibGeom.Light;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Tests.Guides;

/// <summary>What the guide's pages say in numbers and by ids, beside the command lines that are played.</summary>
public partial class GuideClaimTests
{
    [Fact]
    public void TheStandardObjectTiltsByTenDegreesWithoutAWarningAndByElevenNot()
    {
        Assert.DoesNotContain(Tilted(10), f => f.Severity > Severity.Note);
        Assert.Contains(Tilted(11), f => f.Severity > Severity.Note && f.Rule == "overhang");
    }

    [Fact]
    public void TwiceTheSpreadOfLightGrowsEdgesTwiceAsFar()
    {
        TestObject made = TestObject.Of(Presets.Standard);
        var light = new LayerLight(new WorkingCurve(0.12, 4), irradiance: 4, time: 2.5, layer: 0.05);
        double Growth(double blur) => new PrintedObject(made, new GaussianBlur(blur), light).Growth!.Value;
        Assert.True(Growth(0.02) > 0.005);
        Assert.Equal(2, Growth(0.04) / Growth(0.02), 0.01);
    }

    [Fact]
    public void RecipesMakeNoWarning()
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "recipes.md"));
        string[] lines = [.. Make().Matches(page).Select(m => m.Groups[1].Value)];
        Assert.Equal(5, lines.Length);
        Assert.All(
            lines,
            line =>
            {
                CliRun run = CliRun.Of([.. GuideWords.Of(line), "--check", "-q"]);
                Assert.Equal(0, run.ExitCode);
                Assert.DoesNotMatch("(?m)^(warning|error)", run.Out);
            }
        );
    }

    [Fact]
    public void EveryFindingThatTroubleShootingNamesIsOne()
    {
        string known = File.ReadAllText(Path.Combine(Repository.Root, "docs", "findings.md")),
            page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "trouble.md"));
        string[] named = [.. Id().Matches(page).Select(m => m.Groups[1].Value).Distinct()];
        Assert.True(named.Length >= 15, $"{named.Length} ids");
        Assert.All(named, id => Assert.Contains($"* `{id}`\n", known, StringComparison.Ordinal));
    }

    private static IEnumerable<Finding> Tilted(double angle) =>
        TestObject.Of(Presets.Standard with { Tilt = new TiltSpec { Angle = angle } }).Findings;

    [GeneratedRegex("^calibgeom (make .*) -o .*$", RegexOptions.Multiline)]
    private static partial Regex Make();

    [GeneratedRegex("`([a-z]+(?:-[a-z]+)+)`")]
    private static partial Regex Id();
}
