using CalibGeom.TestObjects.Specs;
using SkiaSharp;

namespace CalibGeom.Cli.Tests;

/// <summary>The pictures of docs/drawing.md are those that the commands on the page draw.</summary>
public class DrawingDocsTests
{
    public static TheoryData<string> PresetNames => [.. Presets.All.Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(PresetNames))]
    public void DrawingsOnThePageAreThoseOfTheCommand(string name)
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(0, CliRun.Of("draw", "--object", name, "-o", folder["drawn.svg"]).ExitCode);
        Assert.Equal(File.ReadAllText(folder["drawn.svg"]), File.ReadAllText(Page(folder["drawn.svg"], $"{name}.svg")));
    }

    [Theory]
    [MemberData(nameof(PresetNames))]
    public void ViewsOnThePageAreThoseOfTheCommand(string name)
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(0, CliRun.Of("draw", "--object", name, "--view", "corner", "-o", folder["drawn.png"]).ExitCode);
        using SKBitmap drawn = SKBitmap.Decode(folder["drawn.png"]),
            shown = SKBitmap.Decode(Page(folder["drawn.png"], $"{name}.png"));
        Assert.Equal((shown.Width, shown.Height), (drawn.Width, drawn.Height));
        double different = shown.Pixels.Zip(drawn.Pixels).Sum(p => Math.Abs(p.First.Red - p.Second.Red) / 255.0);
        Assert.InRange(different / shown.Pixels.Length, 0, 0.002);
    }

    [Fact]
    public void ThePageShowsEveryPreset()
    {
        foreach (Preset preset in Presets.All)
            DocsPage.RequireShows("drawing.md", $"pictures/{preset.Name}.png");
    }

    /// <summary>The picture of the page, written anew when tests are asked to.</summary>
    private static string Page(string drawn, string name)
    {
        string path = Path.Combine(Repository.Root, "docs", "pictures", name);
        if (Repository.Updating)
            File.Copy(drawn, path, true);
        return path;
    }
}
