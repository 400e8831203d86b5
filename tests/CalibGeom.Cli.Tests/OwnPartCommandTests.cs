using CalibGeom.Cli.Shared;
using CalibGeom.OwnPart;
using CalibGeom.Testing;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Tests;

/// <summary>
/// A part that the command line has never heard of: its feature table is enough for all that comes after the print.
/// </summary>
public class OwnPartCommandTests
{
    private static readonly FeatureTable Table = TestObject
        .Of(Presets.Witness with { OwnParts = [new Keyway(3, 3.1)] })
        .Features;

    [Fact]
    public void ItsClearanceComesBackFromPredict()
    {
        using TemporaryFolder folder = Bench();
        CliRun run = CliRun.Of(["predict", folder["mine.csv"], "--object", folder["mine.features.json"]]);
        Assert.Equal(ExitCode.Done, run.ExitCode);
        // Designed 0.05, less twice the growth of 0.01.
        Assert.Matches("keyway should slide: 0\\.030 ", run.Out);
        Assert.Matches("joint 1 should slide: 0\\.030 ", run.Out);
    }

    [Fact]
    public void ItIsOnTheSheetAndInTheLog()
    {
        using TemporaryFolder folder = Bench();
        CliRun sheet = CliRun.Of(["readings", "--object", folder["mine.features.json"], "-o", folder["sheet.csv"]]);
        Assert.Equal(ExitCode.Done, sheet.ExitCode);
        string rows = File.ReadAllText(folder["sheet.csv"]);
        Assert.Contains("key.width.x,", rows, StringComparison.Ordinal);
        Assert.Contains("keyway.fit,", rows, StringComparison.Ordinal);
        CliRun logged = CliRun.Of([
            "log",
            "add",
            folder["mine.csv"],
            "--to",
            folder["log.jsonl"],
            "--object",
            folder["mine.features.json"],
            "--time",
            "2.5",
            "--rest",
            "1",
        ]);
        Assert.Equal(ExitCode.Done, logged.ExitCode);
        Assert.Contains("keyway", File.ReadAllText(folder["log.jsonl"]), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("make")]
    [InlineData("draw")]
    public void WhereAShapeIsNeededATableIsRefused(string command)
    {
        using TemporaryFolder folder = Bench();
        CliRun run = CliRun.Of([command, "--object", folder["mine.features.json"], "-o", folder["mine.pdf"]]);
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Contains("is a table of features", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ADamagedTableIsRefusedWithItsName()
    {
        using TemporaryFolder folder = Bench();
        folder.Write("bad.features.json", "{\"features\": [null]}");
        CliRun run = CliRun.Of(["predict", folder["mine.csv"], "--object", folder["bad.features.json"]]);
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Contains("bad.features.json", run.Error, StringComparison.Ordinal);
    }

    /// <summary>A folder with the table, and readings of a print that grew by 0.01 mm.</summary>
    private static TemporaryFolder Bench()
    {
        var folder = new TemporaryFolder();
        folder.Write("mine.features.json", FeatureTableJson.ToText(Table));
        ReadingSet read = new KnownPrint(Table) { GrowthX = 0.01, GrowthY = 0.01 }.Read();
        IEnumerable<string> rows = read
            .Readings.Where(r => r.Kind == ReadingKind.Size)
            .Select(r => FormattableString.Invariant($"{r.Feature},{r.Value:0.####}"));
        folder.Write(
            "mine.csv",
            $"# digest {read.Digest}\n# state dry\n# material rigid\nfeature,value\n{string.Join('\n', rows)}\n"
        );
        return folder;
    }
}
