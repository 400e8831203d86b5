using CalibGeom.Pictures.Reports;

namespace CalibGeom.Cli.Shared;

/// <summary>What pages to file have in common.</summary>
internal static class RecordFile
{
    /// <summary>Refuses a name that is no HTML file, before any work is done.</summary>
    /// <exception cref="InputException">The name ends otherwise.</exception>
    internal static void RequireName(string path)
    {
        if (!path.EndsWith(".html", StringComparison.OrdinalIgnoreCase))
            throw new InputException(InputIds.Option, $"{path}: a report is an HTML file. Let its name end in .html.");
    }

    /// <summary>A finding as the answer of a page: what was found and, where there is one, what to do.</summary>
    internal static IReadOnlyList<string> Sentences(Finding finding) =>
        finding.Remedy.Length > 0 ? [finding.Message, finding.Remedy] : [finding.Message];

    /// <summary>What to call an input.</summary>
    internal static string NameOf(string path) => path == "-" ? "standard input" : Path.GetFileName(path);

    /// <summary>The inputs, unchanged; standard input cannot be read twice and is named only.</summary>
    internal static IReadOnlyList<ReportText> Contents(IReadOnlyList<string> paths) =>
        [
            .. paths.Select(p =>
                p == "-"
                    ? new ReportText("standard input", "(read from standard input; name a file to have it here)")
                    : new ReportText(NameOf(p), File.ReadAllText(p).TrimEnd())
            ),
        ];
}
