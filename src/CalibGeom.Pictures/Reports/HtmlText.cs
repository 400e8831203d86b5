using System.Text;

namespace CalibGeom.Pictures.Reports;

/// <summary>Text as HTML: whatever it holds, it stays text.</summary>
internal static class HtmlText
{
    /// <summary>
    /// For content and for attributes in double quotes. Control characters become spaces; marks that turn the direction
    /// of what follows are kept apart by the element that holds them.
    /// </summary>
    internal static string Escape(string text)
    {
        var html = new StringBuilder(text.Length + 16);
        foreach (char c in text)
            html.Append(
                c switch
                {
                    '&' => "&amp;",
                    '<' => "&lt;",
                    '>' => "&gt;",
                    '"' => "&quot;",
                    '\'' => "&#39;",
                    _ when char.IsControl(c) => " ",
                    _ => c.ToString(),
                }
            );
        return html.ToString();
    }

    /// <summary>For text that others wrote: its direction does not reach beyond it.</summary>
    internal static string Foreign(string text) => $"<bdi>{Escape(text)}</bdi>";
}
