using System.Text.RegularExpressions;

namespace CalibGeom.Cli.Tests.Guides;

/// <summary>A page with the command lines on it, in order, each with the output that the page shows for it.</summary>
internal sealed partial class GuidePage
{
    private GuidePage(string path, IReadOnlyList<GuideLine> lines) => (Path, Lines) = (path, lines);

    /// <summary>From the root of the repository.</summary>
    internal string Path { get; }

    internal IReadOnlyList<GuideLine> Lines { get; }

    /// <summary>Command lines in fences and, where they name no placeholder, within sentences.</summary>
    internal static GuidePage Read(string path)
    {
        string text = File.ReadAllText(System.IO.Path.Combine(Repository.Root, path)).ReplaceLineEndings("\n");
        var lines = new List<GuideLine>();
        foreach (Match part in Parts().Matches(text))
            if (part.Groups["inline"] is { Success: true, Value: var inline })
                lines.AddRange(IsWhole(inline) ? [new GuideLine(inline, Shown(text, part))] : []);
            else
                lines.AddRange(Fenced(text, part));
        return new GuidePage(path, lines);
    }

    private static IEnumerable<GuideLine> Fenced(string text, Match fence)
    {
        string[] commands = [.. fence.Groups["fence"].Value.Split('\n').Select(Command).OfType<string>()];
        for (int i = 0; i < commands.Length; i++)
            yield return new GuideLine(commands[i], i == commands.Length - 1 ? Shown(text, fence) : null);
    }

    /// <summary>Whether it names a file or an option, and not only a command.</summary>
    private static bool IsWhole(string line) => line.Contains('.') || line.Contains("--", StringComparison.Ordinal);

    private static string? Command(string line)
    {
        foreach (string start in new[] { "calibgeom ", "dotnet run --project src/CalibGeom.Cli -- " })
            if (line.StartsWith(start, StringComparison.Ordinal))
                return line[start.Length..];
        return null;
    }

    /// <summary>The fence that follows at once, unless it holds commands itself.</summary>
    private static string? Shown(string text, Match part)
    {
        Match next = Next().Match(text[(part.Index + part.Length)..]);
        return next.Success && !next.Groups["out"].Value.StartsWith("calibgeom ", StringComparison.Ordinal)
            ? next.Groups["out"].Value.TrimEnd()
            : null;
    }

    [GeneratedRegex(
        """^```(?:sh)?\n(?<fence>(?:(?!```).*\n)*?)```$|`calibgeom (?<inline>(?![^`]*(?:\.\.\.|\b[A-Z]{3,}\b))[^`\n]* [^`\n]*)`""",
        RegexOptions.Multiline
    )]
    private static partial Regex Parts();

    [GeneratedRegex("""^(?: prints:)?\n\n```(?:text)?\n(?<out>(?:(?!```).*\n)*?)```""")]
    private static partial Regex Next();
}
