using System.Runtime.CompilerServices;

namespace CalibGeom.Tests.Shared;

/// <summary>
/// Ties a code block of a page in docs/ to the test source that runs it, so that neither can go stale.
/// </summary>
internal static class DocExample
{
    /// <summary>
    /// Requires that the lines between "// begin" and "// end" of the calling file stand on a page, indentation aside.
    /// </summary>
    internal static void RequireOn(string page, [CallerFilePath] string source = "")
    {
        string folder = source[source.Replace('\\', '/').LastIndexOf("/tests/", StringComparison.Ordinal)..]
            .TrimStart('/', '\\');
        string[] lines = File.ReadAllLines(Path.Combine(Repository.Root, folder));
        int begin = Array.FindIndex(lines, l => l.Trim() == "// begin"),
            end = Array.FindIndex(lines, l => l.Trim() == "// end");
        string example = string.Join('\n', lines[(begin + 1)..end].Select(l => l.Trim()));
        string text = string.Join('\n', File.ReadAllLines(Path.Combine(Repository.Root, page)).Select(l => l.Trim()));
        Assert.True(
            end > begin + 1 && text.Contains(example, StringComparison.Ordinal),
            $"{page} does not show:\n{example}"
        );
    }
}
