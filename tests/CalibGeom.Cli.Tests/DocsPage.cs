namespace CalibGeom.Cli.Tests;

/// <summary>A page of docs/ as it reads.</summary>
internal static class DocsPage
{
    /// <summary>Its text, lines ending in LF.</summary>
    internal static string Text(string name) =>
        File.ReadAllText(Path.Combine(Repository.Root, "docs", name)).ReplaceLineEndings("\n");

    /// <summary>Requires that it shows a text, line for line.</summary>
    internal static void RequireShows(string name, string text) =>
        Assert.Contains(text.ReplaceLineEndings("\n").Trim(), Text(name), StringComparison.Ordinal);
}
