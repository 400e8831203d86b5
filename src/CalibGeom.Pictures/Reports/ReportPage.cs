using System.Globalization;
using System.Text;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Objects;

namespace CalibGeom.Pictures.Reports;

/// <summary>
/// The record of an answer that a workshop files: the answer first, then what to type, plots, tables, and exactly what
/// it was computed from. One HTML file that needs no network; nothing in it depends on the day or the machine.
/// Immutable.
/// </summary>
public sealed record ReportPage
{
    /// <summary>What it is about.</summary>
    public required string Title { get; init; }

    /// <summary>The answer, a sentence each.</summary>
    public required IReadOnlyList<string> Answer { get; init; }

    /// <summary>What to type into a machine or slicer, a name and a number each; may be empty.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> ToType { get; init; } = [];

    /// <summary>Findings of the answer.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>Plots.</summary>
    public IReadOnlyList<Drawing> Plots { get; init; } = [];

    /// <summary>Tables as text.</summary>
    public IReadOnlyList<ReportText> Tables { get; init; } = [];

    /// <summary>The inputs, unchanged.</summary>
    public IReadOnlyList<ReportText> Inputs { get; init; } = [];

    /// <summary>The digest of the object, or null when it is not known.</summary>
    public string? Digest { get; init; }

    /// <summary>The version of the program that answered.</summary>
    public required string Version { get; init; }

    /// <summary>Writes the page as UTF-8.</summary>
    /// <param name="stream">Where to; left open.</param>
    public void Write(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        stream.Write(Encoding.UTF8.GetBytes(ToHtml()));
    }

    /// <summary>The page as text.</summary>
    public string ToHtml()
    {
        var html = new StringBuilder();
        html.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Append(
                "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data:\">\n"
            )
            .Append(
                CultureInfo.InvariantCulture,
                $"<title>{HtmlText.Escape(Title)}</title>\n<style>{Style}</style>\n</head>\n<body>\n"
            )
            .Append(
                CultureInfo.InvariantCulture,
                $"<header><h1>{HtmlText.Foreign(Title)}</h1></header>\n<main>\n<section aria-label=\"Answer\" class=\"answer\">\n"
            );
        foreach (string sentence in Answer)
            html.Append(CultureInfo.InvariantCulture, $"<p>{HtmlText.Escape(sentence)}</p>\n");
        html.Append("</section>\n");
        Type(html);
        Plot(html);
        Find(html);
        foreach (ReportText table in Tables)
            Block(html, table);
        if (Inputs.Count > 0)
            html.Append("<h2>What it was computed from</h2>\n");
        foreach (ReportText input in Inputs)
            Block(html, input);
        string digest = Digest is null ? "" : $"Object digest <code>{HtmlText.Escape(Digest)}</code>. ";
        return html.Append(
                CultureInfo.InvariantCulture,
                $"</main>\n<footer><p>{digest}calibgeom {HtmlText.Escape(Version)}.</p>"
            )
            .Append(
                CultureInfo.InvariantCulture,
                $"<p>{HtmlText.Escape(SafetyText.Full)}</p></footer>\n</body>\n</html>\n"
            )
            .ToString();
    }

    private const string Style = """
        :root{color-scheme:light;--ink:#20262d;--soft:#eef1f4;--accent:#1f5480}
        body{margin:0 auto;max-width:52rem;padding:1rem;color:var(--ink);background:#fff;font:1rem/1.45 system-ui,"DejaVu Sans",sans-serif;overflow-wrap:anywhere}
        h1{font-size:1.4rem}h2{font-size:1.1rem;margin:1.4rem 0 .4rem}
        .answer{border-left:.4rem solid var(--accent);background:var(--soft);padding:.5rem 1rem;font-size:1.08rem}
        dl{display:grid;grid-template-columns:minmax(0,max-content) minmax(0,1fr);gap:.3rem 1.2rem;border:2px solid var(--accent);border-radius:.4rem;padding:.8rem 1rem;margin:.4rem 0}
        dt{color:#47525d}dd{margin:0;font:700 1.15rem ui-monospace,"DejaVu Sans Mono",monospace}
        svg{max-width:100%;height:auto;display:block;margin:.6rem 0}
        pre{overflow-x:auto;overflow-wrap:normal;unicode-bidi:plaintext;background:var(--soft);padding:.6rem .8rem;border-radius:.4rem;font:.78rem/1.4 ui-monospace,"DejaVu Sans Mono",monospace}
        footer{font-size:.82rem;color:#47525d;border-top:1px solid #7d8791;margin-top:1.5rem}
        @media print{body{padding:0;font-size:9.5pt}pre{white-space:pre-wrap;font-size:6.8pt}section,dl,svg{break-inside:avoid}}
        """;

    private void Type(StringBuilder html)
    {
        if (ToType.Count == 0)
            return;
        html.Append("<h2>To type</h2>\n<dl>");
        foreach ((string name, string value) in ToType)
            html.Append(
                CultureInfo.InvariantCulture,
                $"<dt>{HtmlText.Foreign(name)}</dt><dd>{HtmlText.Foreign(value)}</dd>"
            );
        html.Append("</dl>\n");
    }

    private void Plot(StringBuilder html)
    {
        foreach (Drawing plot in Plots)
        {
            using var stream = new MemoryStream();
            plot.WriteSvg(stream);
            // The title of an SVG is what those who cannot see it are told.
            html.Append(
                    Encoding
                        .UTF8.GetString(stream.ToArray())
                        .Replace("<svg ", "<svg role=\"img\" ", StringComparison.Ordinal)
                )
                .Append('\n');
        }
    }

    private void Find(StringBuilder html)
    {
        if (Findings.Count == 0)
            return;
        html.Append("<h2>Findings</h2>\n<ul>\n");
        foreach (Finding f in Findings)
            html.Append(
                    CultureInfo.InvariantCulture,
                    $"<li><b>{f.Severity.ToString().ToLowerInvariant()}</b> {HtmlText.Foreign(f.Subject)} "
                )
                .Append(
                    CultureInfo.InvariantCulture,
                    $"{HtmlText.Foreign($"{f.Message} {f.Remedy}".TrimEnd())}</li>\n"
                );
        html.Append("</ul>\n");
    }

    private static void Block(StringBuilder html, ReportText block) =>
        html.Append(CultureInfo.InvariantCulture, $"<h2>{HtmlText.Foreign(block.Heading)}</h2>\n<pre tabindex=\"0\">")
            .Append(
                string.Join(
                    '\n',
                    block.Text.ReplaceLineEndings("\n").Split('\n').Select(l => HtmlText.Escape(l.Replace('\t', ' ')))
                )
            )
            .Append("</pre>\n");
}
