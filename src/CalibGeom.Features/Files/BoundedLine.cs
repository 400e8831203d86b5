using System.Text;

namespace CalibGeom.Features.Files;

/// <summary>Reading lines of a bounded length, so that one without an end takes no memory.</summary>
public static class BoundedLine
{
    /// <summary>
    /// The next line without its end; null after the last. Of a line longer than <paramref name="most"/> comes one
    /// character more than that, which tells it from a whole one.
    /// </summary>
    /// <param name="reader">Where from.</param>
    /// <param name="most">The most characters of a line, LF or CRLF not counted.</param>
    public static string? Read(TextReader reader, int most)
    {
        ArgumentNullException.ThrowIfNull(reader);
        if (reader.Peek() < 0)
            return null;
        var line = new StringBuilder();
        int c;
        while ((c = reader.Read()) >= 0 && c != '\n' && line.Length <= most)
            line.Append((char)c);
        if (line.Length > 0 && line[^1] == '\r' && c == '\n')
            line.Length--;
        return line.ToString();
    }
}
