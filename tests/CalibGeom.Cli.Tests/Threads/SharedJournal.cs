using System.Text.Json;
using CalibGeom.Objects.Families;

namespace CalibGeom.Cli.Tests.Threads;

/// <summary>A journal that several threads write to; each of its lines must be whole.</summary>
internal sealed class SharedJournal
{
    private readonly TemporaryFolder folder = new();
    private readonly FamilyJournal journal;
    private int added;

    internal SharedJournal() => journal = new FamilyJournal(folder["journal.jsonl"]);

    /// <summary>
    /// Adds twenty rows; true when they can be read and every line that is ended is whole. The system may show the
    /// beginning of a line that another thread is writing just now.
    /// </summary>
    internal bool Add()
    {
        int[] own = [.. Enumerable.Range(0, 20).Select(_ => Interlocked.Increment(ref added))];
        foreach (int number in own)
            journal.Add(
                new FamilyRow
                {
                    Number = number,
                    Values = ["0.03", new string('x', 500)],
                    Digest = "0123456789abcdef",
                    GeometryVersion = 1,
                    File = "a.stl",
                    Errors = 0,
                    Warnings = 0,
                }
            );
        string[] ended = File.ReadAllText(folder["journal.jsonl"]).Split('\n')[..^1];
        HashSet<int> read = [.. ended.Select(Number)];
        return own.All(read.Contains);
    }

    /// <summary>What the row of a line is numbered; throws where the line is not whole.</summary>
    private static int Number(string line)
    {
        using var row = JsonDocument.Parse(line);
        return row.RootElement.GetProperty("number").GetInt32();
    }
}
