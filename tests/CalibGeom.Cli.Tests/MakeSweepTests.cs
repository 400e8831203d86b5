using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Tests;

/// <summary>Families of objects: <c>make --sweep</c> and docs/family.md.</summary>
public class MakeSweepTests
{
    private const string Command =
        "calibgeom make --object witness --sweep nest.clearances=0.03:0.07:0.02 --sweep columns.lean=0,15 -o out/{n}.stl";

    [Fact]
    public void ThePageShowsWhatTheCommandDoes()
    {
        using var folder = new TemporaryFolder();
        CliRun run = Run(folder, Command);
        Assert.Equal(ExitCode.Done, run.ExitCode);
        string quoted = Command.Replace("out/{n}.stl", "\"out/{n}.stl\"", StringComparison.Ordinal);
        foreach (string shown in new[] { quoted, run.Out, File.ReadAllText(folder["out/index.csv"]) })
            DocsPage.RequireShows("family.md", shown);
    }

    [Fact]
    public void EachObjectIsTheOneThatMakeMakes()
    {
        using var folder = new TemporaryFolder();
        Run(folder, Command);
        CliRun.Of(
            "make",
            "--object",
            "witness",
            "--set",
            "nest.clearances=0.05",
            "--set",
            "columns.lean=15",
            "-o",
            folder["one.stl"]
        );
        // The header names the object; all that follows is the same.
        Assert.Equal(File.ReadAllBytes(folder["one.stl"])[80..], File.ReadAllBytes(folder["out/4.stl"])[80..]);
        Assert.Equal(File.ReadAllText(folder["one.features.csv"]), File.ReadAllText(folder["out/4.features.csv"]));
    }

    [Fact]
    public void PartsMakeEachObjectOnce()
    {
        using var folder = new TemporaryFolder();
        Run(folder, Command);
        for (int part = 1; part <= 4; part++)
            Run(folder, $"{Command.Replace("out/", "parts/", StringComparison.Ordinal)} --shard {part}/4");
        for (int n = 1; n <= 6; n++)
            Assert.Equal(File.ReadAllBytes(folder[$"out/{n}.stl"]), File.ReadAllBytes(folder[$"parts/{n}.stl"]));
        Assert.Equal(
            File.ReadLines(folder["out/index.csv"]).Order(),
            Enumerable
                .Range(1, 4)
                .SelectMany(part => File.ReadLines(folder[$"parts/index.{part}-of-4.csv"]))
                .Distinct()
                .Order()
        );
    }

    /// <summary>What is there stays; what is gone, or was cut off in the middle of a line, is made again.</summary>
    [Fact]
    public void AStoppedRunGoesOn()
    {
        using var folder = new TemporaryFolder();
        Run(folder, Command);
        string index = File.ReadAllText(folder["out/index.csv"]);
        File.Delete(folder["out/2.stl"]);
        DateTime untouched = File.GetLastWriteTimeUtc(folder["out/1.stl"]);
        string[] journal = File.ReadAllLines(folder["out/index.journal.jsonl"]);
        File.WriteAllText(folder["out/index.journal.jsonl"], string.Join("\n", journal)[..^20]);
        CliRun again = Run(folder, Command);
        Assert.Contains("2 made now, 4 stood already", again.Out, StringComparison.Ordinal);
        Assert.Equal(index, File.ReadAllText(folder["out/index.csv"]));
        Assert.Equal(untouched, File.GetLastWriteTimeUtc(folder["out/1.stl"]));
        Assert.Contains("0 made now, 6 stood already", Run(folder, Command).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatCannotWorkIsARowAndAFinding()
    {
        using var folder = new TemporaryFolder();
        CliRun run = Run(
            folder,
            "calibgeom make --object witness --sweep columns.diameters=0.4,0.6;0.6,0.4 -o out/{n}.stl --json"
        );
        Assert.Equal(ExitCode.Finding, run.ExitCode);
        JsonNode result = JsonNode.Parse(run.Out)!["result"]!;
        Assert.Equal(1, (int)result["failing"]!);
        Assert.Equal("", (string)result["objects"]![1]!["file"]!);
        Assert.False(File.Exists(folder["out/2.stl"]));
        Assert.Equal(
            JsonNode.Parse(File.ReadAllText(folder["out/index.json"]))!["objects"]!.ToJsonString(),
            result["objects"]!.ToJsonString()
        );
    }

    /// <summary>What cannot work is counted once, told alike by every run, and written to the journal once.</summary>
    [Fact]
    public void WhatCannotWorkIsToldAgainAndNotMadeAgain()
    {
        using var folder = new TemporaryFolder();
        const string line = "calibgeom make --object witness --sweep columns.diameters=0.4,0.6;0.6,0.4 -o out/{n}.stl";
        Assert.Contains("1 made now, 0 stood already, 1 cannot work", Run(folder, line).Out, StringComparison.Ordinal);
        string index = File.ReadAllText(folder["out/index.csv"]),
            journal = File.ReadAllText(folder["out/index.journal.jsonl"]);
        CliRun again = Run(folder, line);
        Assert.Equal(ExitCode.Finding, again.ExitCode);
        Assert.Contains("0 made now, 1 stood already, 1 cannot work", again.Out, StringComparison.Ordinal);
        Assert.Equal(index, File.ReadAllText(folder["out/index.csv"]));
        Assert.Equal(journal, File.ReadAllText(folder["out/index.journal.jsonl"]));
    }

    /// <summary>A journal is a file that anybody may have written: what is no row of this family is nothing.</summary>
    [Theory]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{\"number\":1}")]
    [InlineData(
        "{\"number\":1,\"values\":null,\"digest\":null,\"geometryVersion\":2,\"file\":\"1.stl\",\"errors\":0,\"warnings\":0}"
    )]
    [InlineData(
        "{\"number\":1,\"values\":[],\"digest\":\"\",\"geometryVersion\":2,\"file\":\"\",\"errors\":0,\"warnings\":0,\"volume\":1e999}"
    )]
    public void AHostileLineOfTheJournalIsPassedOver(string row)
    {
        using var folder = new TemporaryFolder();
        const string line = "calibgeom make --object witness --sweep columns.lean=0,5 --shard 1/2 -o out/{n}.stl";
        Run(folder, line);
        string index = File.ReadAllText(folder["out/index.1-of-2.json"]);
        File.AppendAllText(folder["out/index.1-of-2.journal.jsonl"], row + "\n");
        CliRun again = Run(folder, line);
        Assert.Equal((ExitCode.Done, index), (again.ExitCode, File.ReadAllText(folder["out/index.1-of-2.json"])));
        Assert.Contains("0 made now, 1 stood already", again.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void AJournalWithAnEndlessLineIsRefusedInWords()
    {
        using var folder = new TemporaryFolder();
        const string line = "calibgeom make --object witness --sweep columns.lean=0,5 --shard 1/2 -o out/{n}.stl";
        Run(folder, line);
        File.AppendAllText(folder["out/index.1-of-2.journal.jsonl"], new string('x', 70_000));
        CliRun again = Run(folder, line);
        Assert.Equal(ExitCode.BadUse, again.ExitCode);
        Assert.Contains("index.1-of-2.journal.jsonl:2: a journal has at most", again.Error, StringComparison.Ordinal);
    }

    /// <summary>A file of another length is not the one that the journal tells of.</summary>
    [Fact]
    public void AFileThatWasCutIsMadeAgain()
    {
        using var folder = new TemporaryFolder();
        const string line = "calibgeom make --object witness --sweep columns.lean=0,5 --shard 1/2 -o out/{n}.stl";
        Run(folder, line);
        byte[] whole = File.ReadAllBytes(folder["out/1.stl"]);
        File.WriteAllBytes(folder["out/1.stl"], whole[..1000]);
        Assert.Contains("1 made now, 0 stood already", Run(folder, line).Out, StringComparison.Ordinal);
        Assert.Equal(whole, File.ReadAllBytes(folder["out/1.stl"]));
    }

    [Theory]
    [InlineData("--sweep columns.leen=0,5 -o out/{n}.stl", "no parameter columns.leen")]
    [InlineData("--sweep columns.lean=0,5 -o out/x.stl", "{n}")]
    [InlineData("--sweep columns.lean=0:90:10 -o out/{n}.stl", "0 to 60")]
    [InlineData("--sweep columns.lean=5:0:1 -o out/{n}.stl", "goes up")]
    [InlineData("--sweep columns.lean=0:60:0.0001 -o out/{n}.stl", "larger step")]
    [InlineData("--sweep columns.lean=0,,5 -o out/{n}.stl", "a value is empty")]
    [InlineData("--sweep columns.lean=0,5 --sweep columns.lean=7 -o out/{n}.stl", "swept twice")]
    [InlineData("--sweep columns.lean=0,5 -o out/{n}.stl --shard 5/4", "PART/PARTS")]
    [InlineData("--sweep columns.lean=0,5 -o out/{n}.stl --check", "--check")]
    [InlineData("-o out/x.stl --shard 1/4", "--sweep")]
    public void ABadSweepIsRefusedBeforeAnythingIsMade(string options, string message)
    {
        using var folder = new TemporaryFolder();
        CliRun run = Run(folder, "calibgeom make " + options);
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder["out"]));
    }

    private static CliRun Run(TemporaryFolder folder, string line) =>
        CliRun.Of([
            .. line.Split(' ')
                .Skip(1)
                .Select(word => word.Contains(".stl", StringComparison.Ordinal) ? folder[word] : word),
        ]);
}
