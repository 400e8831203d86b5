using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Tests;

/// <summary>A name with a line end in it makes no second line that looks like one of this program's.</summary>
public class OneLineTests
{
    private const string Evil = "x\ncalibgeom: all is well";

    [Theory]
    [InlineData("inspect", Evil + ".stl")]
    [InlineData("predict", Evil + ".csv")]
    [InlineData("tune", Evil)]
    [InlineData("make", "--set", "title=" + Evil)]
    [InlineData("make", "-o", Evil + ".stl")]
    [InlineData(Evil)]
    [InlineData("inspect", "x\rcalibgeom: all is well.stl")]
    public void ACommandLineHoldsNoLineEnd(params string[] args)
    {
        CliRun run = CliRun.Of(args);
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Matches(
            @"^calibgeom: ""[^\r\n]*\\u000[AD]calibgeom: all is well[^\r\n]* holds a line end at position \d+[^\r\n]*\r?\n\z",
            run.Error
        );
    }

    [Theory]
    [InlineData("\"resin\":\"Demo grey\"", "\"resin\":\"x\\ncalibgeom: all is well\"")]
    [InlineData("\"printer\":\"bench\"", "\"printer\":\"x\\ncalibgeom: all is well\"")]
    [InlineData("\"state\":\"dry\"", "\"state\":\"x\\ncalibgeom: all is well\"")]
    [InlineData("\"rest\":1", "\"x\\ncalibgeom: all is well\":1")]
    public void ALogIsRefusedInOneLine(string text, string changed)
    {
        using var folder = new TemporaryFolder();
        string log = folder["log.jsonl"],
            readings = folder.Write("a.csv", "# state dry\nfeature,value\nbox1.outside.x,8.02\nbox2.inside.x,8.08\n");
        string[] add = ["log", "add", readings, "--to", log, "--time", "2.5", "--rest", "1", "--printer", "bench"];
        Assert.Equal(ExitCode.Done, CliRun.Of([.. add, "--resin", "Demo grey", "--object", "standard"]).ExitCode);
        string line = File.ReadAllText(log);
        Assert.Contains(text, line, StringComparison.Ordinal);
        File.WriteAllText(log, line.Replace(text, changed, StringComparison.Ordinal));
        CliRun run = CliRun.Of("log", "show", log);
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Single(run.Error.TrimEnd().Split('\n'));
    }

    [Fact]
    public void EveryFaultOfReadingsHasALineOfItsOwn()
    {
        using var folder = new TemporaryFolder();
        CliRun run = CliRun.Of("predict", folder.Write("a.csv", "feature,value\nbox1.outside.x,a\nbox2.inside.x,b\n"));
        Assert.Equal(2, run.Error.TrimEnd().Split('\n').Length);
    }
}
