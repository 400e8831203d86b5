using System.Text;

namespace CalibGeom.Features.Files;

/// <summary>
/// Comma-separated values after RFC 4180: quoted fields may hold commas, quotes (doubled) and line ends.
/// </summary>
public static class CsvText
{
    /// <summary>The rows of a text; lines may end in LF or CRLF, and empty lines are passed over.</summary>
    /// <param name="text">The text.</param>
    /// <param name="firstLine">The number of its first line, for messages.</param>
    /// <exception cref="InputException">A quote is not closed, or stands where none may.</exception>
    public static IEnumerable<CsvRow> Rows(string text, int firstLine)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Split(text, firstLine);
    }

    private static IEnumerable<CsvRow> Split(string text, int firstLine)
    {
        int at = 0,
            line = firstLine;
        while (at < text.Length)
        {
            int start = line;
            var fields = new List<string>();
            do fields.Add(Field(text, ref at, ref line));
            while (at < text.Length && text[at++] == ',');
            if (fields is not [""])
                yield return new CsvRow(start, fields);
        }
    }

    /// <summary>A field as it is written: quoted when it has to be.</summary>
    /// <param name="field">Its text.</param>
    public static string Quote(string field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return field.AsSpan().IndexOfAny("\",\r\n") < 0 && !field.StartsWith('#')
            ? field
            : $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }

    private static string Field(string text, ref int at, ref int line)
    {
        if (at < text.Length && text[at] == '"')
            return Quoted(text, ref at, ref line);
        int end = text.AsSpan(at).IndexOfAny(",\n");
        end = end < 0 ? text.Length : at + end;
        string field = text[at..end];
        if (end == text.Length || text[end] == '\n')
        {
            field = field.TrimEnd('\r');
            line++;
        }
        if (field.Contains('"', StringComparison.Ordinal))
            throw new InputException(
                $"Line {line}: a quote stands inside a field that does not begin with one. Put the whole field "
                    + $"in quotes, and double quotes inside it."
            );
        at = end;
        return field;
    }

    private static string Quoted(string text, ref int at, ref int line)
    {
        int opened = line;
        var field = new StringBuilder();
        for (at++; ; at++)
        {
            if (at == text.Length)
                throw new InputException($"Line {opened}: a quoted field is not closed; the file may be cut short.");
            if (text[at] == '\n')
                line++;
            if (text[at] != '"')
                field.Append(text[at]);
            else if (at + 1 < text.Length && text[at + 1] == '"')
                field.Append(text[at++]);
            else
                break;
        }
        at++;
        if (at < text.Length && text[at] == '\r')
            at++;
        if (at < text.Length && text[at] is not (',' or '\n'))
            throw new InputException($"Line {line}: text follows a closing quote. Separate fields by commas.");
        if (at == text.Length || text[at] == '\n')
            line++;
        return field.ToString();
    }
}
