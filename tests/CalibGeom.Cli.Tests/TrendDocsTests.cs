using System.Text.RegularExpressions;

namespace CalibGeom.Cli.Tests;

/// <summary>The commands on docs/trend.md and docs/map.md print what the pages show, and draw their pictures.</summary>
public class TrendDocsTests
{
    [Fact]
    public void Trend() =>
        Require(
            "docs/trend.md",
            "calibgeom trend demo-grey.jsonl --tolerance 0.03 --plot trend.svg",
            DemoLogs.Watched(0.04),
            "trend.svg"
        );

    [Fact]
    public void Map() =>
        Require(
            "docs/map.md",
            "calibgeom map plate.jsonl --plate 150x90 --for 20/20.2 --at 40,20 --plot map.svg",
            DemoLogs.Plate(0.4),
            "map.svg"
        );

    private static void Require(string page, string command, string log, string picture)
    {
        using var folder = new TemporaryFolder();
        string[] words = command.Split(' ').Skip(1).ToArray();
        File.WriteAllText(folder[words[1]], log);
        CliRun run = CliRun.Of(
            words.Select(w => w.EndsWith(".jsonl", StringComparison.Ordinal) || w == picture ? folder[w] : w).ToArray()
        );
        Assert.Equal("", run.Error);
        RepositoryFile.RequireHolds($"docs/pictures/{picture}", File.ReadAllBytes(folder[picture]));
        string path = Path.Combine(Repository.Root, page),
            text = File.ReadAllText(path).ReplaceLineEndings("\n"),
            shown = $"```\n{command}\n```\n\n```\n{run.Out.ReplaceLineEndings("\n").Trim()}\n```\n";
        var block = new Regex("```\n" + Regex.Escape(command) + "\n```\n\n```\n.*?\n```\n", RegexOptions.Singleline);
        if (Repository.Updating)
            File.WriteAllText(path, block.Replace(text, shown.Replace("$", "$$", StringComparison.Ordinal)));
        Assert.Contains(shown, File.ReadAllText(path).ReplaceLineEndings("\n"), StringComparison.Ordinal);
    }
}
