namespace CalibGeom.Tests;

/// <summary>
/// One case of a corpus file: a line <c>case NAME</c>, lines <c>KEY VALUE</c> with what is expected, and between the
/// lines <c>input</c> and <c>end</c> the text under test. Lines beginning with # outside of the input are comments.
/// </summary>
public sealed record CorpusCase(string Name, IReadOnlyDictionary<string, string> Expected, string Input)
{
    public override string ToString() => Name;

    public string? this[string key] => Expected.GetValueOrDefault(key);

    /// <summary>All cases of a corpus file below the test assembly.</summary>
    public static IEnumerable<CorpusCase> Load(string relativePath)
    {
        using IEnumerator<string> lines = File.ReadLines(Path.Combine(AppContext.BaseDirectory, relativePath))
            .GetEnumerator();
        while (lines.MoveNext())
        {
            if (lines.Current.Trim().Length == 0 || lines.Current.StartsWith('#'))
                continue;
            string name = After(lines.Current, "case");
            var expected = new Dictionary<string, string>();
            while (lines.MoveNext() && lines.Current != "input")
            {
                string line = lines.Current.Trim();
                int space = line.IndexOf(' ');
                expected.Add(line[..space], line[(space + 1)..].Trim());
            }
            var input = new List<string>();
            while (lines.MoveNext() && lines.Current != "end")
                input.Add(lines.Current);
            yield return new(name, expected, string.Concat(input.Select(l => l + "\n")));
        }
    }

    private static string After(string line, string word) =>
        line.StartsWith(word + " ", StringComparison.Ordinal)
            ? line[(word.Length + 1)..]
            : throw new InvalidDataException($"Expected \"{word} ...\", found \"{line}\".");
}
