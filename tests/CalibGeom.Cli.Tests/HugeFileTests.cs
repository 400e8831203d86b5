using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Tests;

/// <summary>A file of any size in a wrong place is answered in words, without reading it whole.</summary>
public class HugeFileTests
{
    private const long Huge = 3L << 30;

    [Theory]
    [InlineData("limit for a readings file", "predict", "FILE")]
    [InlineData("limit for a readings file", "map", "FILE", "--object", "standard")]
    [InlineData("limit for a readings file", "log", "add", "FILE", "--to", "never.jsonl", "--time", "2", "--rest", "1")]
    [InlineData("longer than", "log", "show", "FILE")]
    [InlineData("longer than", "tune", "FILE")]
    public void AHugeFileIsRefused(string about, params string[] args)
    {
        using var folder = new TemporaryFolder();
        using (FileStream sparse = File.Create(folder["huge.txt"]))
            sparse.SetLength(Huge);
        CliRun run = CliRun.Of([.. args.Select(a => a == "FILE" ? folder["huge.txt"] : a)]);
        Assert.Equal((ExitCode.BadUse, ""), (run.ExitCode, run.Out));
        Assert.Contains(about, run.Error, StringComparison.Ordinal);
        Assert.False(File.Exists("never.jsonl"));
    }
}
