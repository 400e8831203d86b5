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
        string page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "family.md")).ReplaceLineEndings("\n");
        Assert.Contains(
            Command.Replace("out/{n}.stl", "\"out/{n}.stl\"", StringComparison.Ordinal),
            page,
            StringComparison.Ordinal
        );
        Assert.Contains(run.Out.Trim(), page, StringComparison.Ordinal);
        Assert.Contains(File.ReadAllText(folder["out/index.csv"]), page, StringComparison.Ordinal);
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
