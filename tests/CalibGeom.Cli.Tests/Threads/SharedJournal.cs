using CalibGeom.Objects.Families;

namespace CalibGeom.Cli.Tests.Threads;

/// <summary>A journal that several threads write to; each of its lines must be whole.</summary>
internal sealed class SharedJournal
{
    private readonly TemporaryFolder folder = new();
    private readonly FamilyJournal journal;
    private int added;

    internal SharedJournal() => journal = new FamilyJournal(folder["journal.jsonl"]);

    /// <summary>Adds twenty rows; true when all that are known to be added can be read.</summary>
    internal bool Add()
    {
        for (int i = 0; i < 20; i++)
            journal.Add(
                new FamilyRow
                {
                    Number = Interlocked.Increment(ref added),
                    Values = ["0.03", new string('x', 500)],
                    Digest = "0123456789abcdef",
                    GeometryVersion = 1,
                    File = "a.stl",
                    Errors = 0,
                    Warnings = 0,
                }
            );
        return File.ReadLines(folder["journal.jsonl"]).All(l => l.StartsWith('{') && l.EndsWith('}'));
    }
}
