using CalibGeom.Cli.Shared;
using SkiaSharp;

namespace CalibGeom.Cli.Tests;

/// <summary>The worked example of docs/place.md: the command it shows, what it prints, and its picture.</summary>
public class PlaceDocsTests
{
    private const string Command =
        "calibgeom place holder.stl tray.stl --plate 150x90x160 --gap 2 --picture place.svg -o plate.stl";

    [Fact]
    public void ThePageShowsWhatTheCommandDoes()
    {
        using var folder = new TemporaryFolder();
        CliRun run = Run(folder, Command);
        string page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "place.md")).ReplaceLineEndings("\n");
        Assert.Contains(Command, page, StringComparison.Ordinal);
        string said = run.Out.ReplaceLineEndings("\n").Trim();
        Assert.True(page.Contains(said, StringComparison.Ordinal), said);
        Same("place.svg", File.ReadAllBytes(folder["place.svg"]), (expected, actual) => Assert.Equal(expected, actual));
    }

    [Fact]
    public void ThePictureIsTheSameAsPng()
    {
        using var folder = new TemporaryFolder();
        Run(folder, Command.Replace("place.svg", "place.png", StringComparison.Ordinal));
        Same(
            "place.png",
            File.ReadAllBytes(folder["place.png"]),
            (expected, actual) =>
            {
                using SKBitmap one = SKBitmap.Decode(expected),
                    other = SKBitmap.Decode(actual);
                Assert.Equal((one.Width, one.Height), (other.Width, other.Height));
                double different = one
                    .Pixels.Zip(other.Pixels)
                    .Sum(p => Math.Abs(p.First.Red - p.Second.Red) + Math.Abs(p.First.Blue - p.Second.Blue));
                Assert.InRange(different / one.Pixels.Length, 0, 0.5);
            }
        );
    }

    [Fact]
    public void TheMapOnThePageWorks()
    {
        const string line = "calibgeom place holder.stl tray.stl --plate 150x90x160 --at map --count 3 -o plate.3mf";
        using var folder = new TemporaryFolder();
        CliRun run = Run(folder, line);
        string page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "place.md")).ReplaceLineEndings("\n");
        Assert.Contains(line, page, StringComparison.Ordinal);
        string said = run.Out.ReplaceLineEndings("\n").Trim();
        Assert.True(page.Contains(said, StringComparison.Ordinal), said);
    }

    private static CliRun Run(TemporaryFolder folder, string line)
    {
        DemoParts.WriteHolder(folder["holder.stl"], -26, 24);
        DemoParts.WriteTray(folder["tray.stl"], -38, -12);
        string[] args = line.Split(' ')
            .Skip(1)
            .Select(a => Path.GetExtension(a) is ".stl" or ".svg" or ".png" or ".3mf" ? folder[a] : a)
            .ToArray();
        CliRun run = CliRun.Of(args);
        Assert.True(run.ExitCode == ExitCode.Done, run.Out + run.Error);
        return run;
    }

    private static void Same(string name, byte[] actual, Action<byte[], byte[]> compare)
    {
        string path = Path.Combine(Repository.Root, "docs", "pictures", name);
        if (Repository.Updating)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, actual);
        }
        compare(File.ReadAllBytes(path), actual);
    }
}
