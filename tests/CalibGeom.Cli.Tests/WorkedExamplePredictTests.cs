using System.Text;
using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Tests;

/// <summary>The numbers of docs/worked-example-predict.md are what the command prints.</summary>
public class WorkedExamplePredictTests
{
    private const string Page = "docs/worked-example-predict.md";

    [Fact]
    public void ThePageShowsWhatTheCommandPrints()
    {
        string text = File.ReadAllText(Path.Combine(Repository.Root, Page)).ReplaceLineEndings("\n");
        using var folder = new TemporaryFolder();
        string line = text.Split('\n')
            .First(l => l.StartsWith("`calibgeom predict ", StringComparison.Ordinal))
            .Split('`')[1];
        string bench = folder.Write("bench.csv", Block(text, "csv"));
        CliRun run = CliRun.Of(line.Split(' ')[1..].Select(w => w == "bench.csv" ? bench : w).ToArray());
        Assert.True(run.ExitCode == ExitCode.Done, run.Error);
        string expected = text.Replace(
            "```text\n" + Block(text, "text") + "```",
            "```text\n" + run.Out.ReplaceLineEndings("\n").TrimEnd() + "\n```",
            StringComparison.Ordinal
        );
        RepositoryFile.RequireHolds(Page, Encoding.UTF8.GetBytes(expected));
    }

    private static string Block(string text, string language)
    {
        int from = text.IndexOf($"```{language}\n", StringComparison.Ordinal) + language.Length + 4;
        return text[from..text.IndexOf("```", from, StringComparison.Ordinal)];
    }
}
