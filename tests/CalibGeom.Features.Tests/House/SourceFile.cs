using System.Text.RegularExpressions;

namespace CalibGeom.Features.Tests.House;

/// <summary>A file of C# under src, as text.</summary>
internal sealed partial record SourceFile(string Path, string Text)
{
    /// <summary>The folder as a namespace would name it.</summary>
    internal string Folder => System.IO.Path.GetDirectoryName(Path)!.Replace('\\', '/').Replace('/', '.');

    internal string? Namespace => NamespaceLine().Match(Text) is { Success: true } m ? m.Groups[1].Value : null;

    internal IEnumerable<string> Usings => UsingLine().Matches(Text).Select(m => m.Groups[1].Value);

    /// <summary>Top-level types that the file declares.</summary>
    internal IEnumerable<string> Types => TypeLine().Matches(Text).Select(m => m.Groups[1].Value);

    internal IEnumerable<string> Lines => Text.ReplaceLineEndings("\n").Split('\n');

    /// <summary>Numbers of lines over a limit; what stands in string literals does not count.</summary>
    internal IEnumerable<int> Wide(int columns)
    {
        bool raw = false;
        int number = 0;
        foreach (string line in Lines)
        {
            number++;
            bool within = raw;
            raw ^= line.Split("\"\"\"").Length % 2 == 0;
            if (!within && !raw && line.Length > columns && Literal().Replace(line, "\"\"").Length > columns)
                yield return number;
        }
    }

    /// <summary>Every file of a folder of the repository that git would keep.</summary>
    internal static IReadOnlyList<SourceFile> Under(string folder, string pattern = "*.cs")
    {
        string root = System.IO.Path.Combine(Repository.Root, folder);
        return
        [
            .. Directory
                .EnumerateFiles(root, pattern, SearchOption.AllDirectories)
                .Select(path => (Path: path, Short: System.IO.Path.GetRelativePath(root, path).Replace('\\', '/')))
                .Where(f => !f.Short.Split('/').Any(part => part is "bin" or "obj" or "node_modules"))
                .OrderBy(f => f.Short, StringComparer.Ordinal)
                .Select(f => new SourceFile(f.Short, File.ReadAllText(f.Path))),
        ];
    }

    [GeneratedRegex("""["](?:[^"\\]|\\.)*["]""")]
    private static partial Regex Literal();

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex NamespaceLine();

    [GeneratedRegex(@"^using (?:static )?(CalibGeom[\w.]*)", RegexOptions.Multiline)]
    private static partial Regex UsingLine();

    [GeneratedRegex(
        @"^(?:(?:public|internal|file|static|sealed|abstract|partial|readonly|ref) )+"
            + @"(?:class|record struct|record|struct|interface|enum) (\w+)",
        RegexOptions.Multiline
    )]
    private static partial Regex TypeLine();
}
