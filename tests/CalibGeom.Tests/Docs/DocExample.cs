using System.Runtime.CompilerServices;

namespace CalibGeom.Tests.Docs;

/// <summary>Ties a code block of a page in docs/ to the test source that runs it, so that neither can go stale.</summary>
internal static class DocExample
{
    /// <summary>The repository's root.</summary>
    internal static string Root { get; } = FindRoot();

    /// <summary>Requires that the lines between "// begin" and "// end" of the calling file stand on a page, indentation aside.</summary>
    internal static void RequireOn(string page, [CallerFilePath] string source = "")
    {
        string[] lines = File.ReadAllLines(Path.Combine(Root, "tests", "CalibGeom.Tests", "Docs", Path.GetFileName(source)));
        int begin = Array.FindIndex(lines, l => l.Trim() == "// begin"), end = Array.FindIndex(lines, l => l.Trim() == "// end");
        string example = string.Join('\n', lines[(begin + 1)..end].Select(l => l.Trim()));
        string text = string.Join('\n', File.ReadAllLines(Path.Combine(Root, page)).Select(l => l.Trim()));
        Assert.True(end > begin + 1 && text.Contains(example, StringComparison.Ordinal), $"{page} does not show:\n{example}");
    }

    private static string FindRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "CalibGeom.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("CalibGeom.sln is not above the tests.");
    }
}
