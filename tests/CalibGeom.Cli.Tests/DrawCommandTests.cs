using System.Text;

namespace CalibGeom.Cli.Tests;

public class DrawCommandTests
{
    [Theory]
    [InlineData("svg", "<svg ")]
    [InlineData("png", "\u0089PNG")]
    [InlineData("pdf", "%PDF-")]
    public void DrawsInTheFormatThatTheNameAsksFor(string ending, string begin)
    {
        using var folder = new TemporaryFolder();
        string path = folder[$"witness.{ending}"];
        CliRun run = CliRun.Of("draw", "--object", "witness", "--paper", "letter", "-o", path);
        Assert.Equal((0, $"wrote {path}\n"), (run.ExitCode, run.Error));
        Assert.StartsWith(begin, Encoding.Latin1.GetString(File.ReadAllBytes(path)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("-60/35", 0)]
    [InlineData("top", 0)]
    [InlineData("behind", 2)]
    [InlineData("-60/95", 2)]
    public void DrawsShadedFromWhereItIsAsked(string view, int code)
    {
        using var folder = new TemporaryFolder();
        string path = folder["view.png"];
        CliRun run = CliRun.Of("draw", "--object", "witness", "--view", view, "-o", path);
        Assert.Equal(code, run.ExitCode);
        Assert.Equal(code == 0, File.Exists(path));
        if (code == 2)
            Assert.Contains($"--view is \"{view}\"", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("draw|--object|witness|-o|x.gif", "x.gif")]
    [InlineData("draw|--object|witness|--paper|a3", "a4 or letter")]
    [InlineData("draw|no-such-thing", "no-such-thing")]
    [InlineData("draw|--object|witness|--view|top|--paper|a4", "leave --view or --paper away")]
    [InlineData("readings|--sheet|bench.csv", ".html")]
    [InlineData("make|--check|--sheet|bench.html", "--check")]
    [InlineData("make|-o|-|--picture|x.png", "beside the mesh")]
    public void BadUseIsSaid(string line, string said)
    {
        CliRun run = CliRun.Of(line.Split('|'));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(said, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ADesignThatCannotWorkIsNotDrawn()
    {
        using var folder = new TemporaryFolder();
        string path = folder["x.svg"];
        CliRun run = CliRun.Of(
            "draw",
            "--object",
            "standard",
            "--set",
            "nest.wall=0.4",
            "--set",
            "nest.sizes=3,4,5",
            "-o",
            path
        );
        Assert.Equal(1, run.ExitCode);
        Assert.False(File.Exists(path));
        Assert.Contains("nothing was drawn", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void MakeWritesSheetPictureAndThumbnail()
    {
        using var folder = new TemporaryFolder();
        CliRun run = CliRun.Of(
            "make",
            "--object",
            "witness",
            "-o",
            folder["w.3mf"],
            "--sheet",
            folder["w.html"],
            "--picture",
            folder["w.svg"]
        );
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("<!DOCTYPE html>", File.ReadAllText(folder["w.html"]), StringComparison.Ordinal);
        Assert.Contains("data:image/png", File.ReadAllText(folder["w.svg"]), StringComparison.Ordinal);
        using var zip = System.IO.Compression.ZipFile.OpenRead(folder["w.3mf"]);
        using Stream png = zip.GetEntry("Metadata/thumbnail.png")!.Open();
        Assert.Equal(0x89, png.ReadByte());
        // The object is still made again from the file.
        Assert.Equal(0, CliRun.Of("make", "--object", folder["w.3mf"], "--check").ExitCode);
    }

    [Fact]
    public void ReadingsWritesTheSheet()
    {
        using var folder = new TemporaryFolder();
        CliRun run = CliRun.Of("readings", "--object", "witness", "--sheet", folder["bench.html"]);
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("box1.outside.x", File.ReadAllText(folder["bench.html"]), StringComparison.Ordinal);
    }

    [Fact]
    public void TheReportOfPredictSaysWhatIsPrinted()
    {
        using var folder = new TemporaryFolder();
        string readings = folder["bench.csv"],
            page = folder["report.html"];
        File.WriteAllText(
            readings,
            "# state dry\nfeature,value,unit,instrument,note\nbox1.outside.x,8.03,mm,,<b>\u202E=1+1\n"
                + "box2.inside.x,8.08,mm,,\nbox2.outside.x,11.22,mm,,\nbox3.inside.x,11.28,mm,,\nspan.x,40.02,mm,,\n"
        );
        CliRun run = CliRun.Of("predict", readings, "--object", "standard", "--report", page);
        Assert.Equal(0, run.ExitCode);
        string html = File.ReadAllText(page);
        string first = run.Out.Split('\n')[0];
        Assert.Contains(first.Replace("'", "&#39;", StringComparison.Ordinal), html, StringComparison.Ordinal);
        Assert.Contains("&lt;b&gt;\u202E=1+1", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>\u202E", html, StringComparison.Ordinal);
        Assert.Contains("<svg role=\"img\"", html, StringComparison.Ordinal);
        Assert.Contains("scale factor X", html, StringComparison.Ordinal);
        Assert.Contains("flammable", html, StringComparison.Ordinal);
        Assert.Equal(2, CliRun.Of("predict", readings, "--report", folder["r.pdf"]).ExitCode);
    }
}
