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

    /// <summary>
    /// The fields of one line as people type it: spaces round a field do not count, and no field runs over lines.
    /// </summary>
    /// <param name="line">The line.</param>
    /// <param name="separator">What stands between fields.</param>
    /// <exception cref="InputException">A quote is not closed, or text follows a closing one.</exception>
    public static IReadOnlyList<string> Fields(string line, char separator)
    {
        ArgumentNullException.ThrowIfNull(line);
        var fields = new List<string>();
        for (int at = 0; ; at++)
        {
            at = PastSpaces(line, at);
            if (at < line.Length && line[at] == '"')
            {
                fields.Add(
                    Quoted(line, ref at)
                        ?? throw new InputException(InputIds.File, "a quote is opened and not closed on the line.")
                );
                at = PastSpaces(line, at);
            }
            else
            {
                int end = line.IndexOf(separator, at);
                end = end < 0 ? line.Length : end;
                fields.Add(line[at..end].Trim());
                at = end;
            }
            if (at >= line.Length)
                return fields;
            if (line[at] != separator)
                throw new InputException(
                    InputIds.File,
                    "text follows a closing quote. Double the quotes inside a quoted field."
                );
        }
    }

    /// <summary>A field as it is written: quoted when it has to be, for commas and semicolons as separators.</summary>
    /// <param name="field">Its text.</param>
    public static string Quote(string field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return field.AsSpan().IndexOfAny("\",;\r\n") < 0 && !field.StartsWith('#')
            ? field
            : $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }

    /// <summary>
    /// Whether a spreadsheet would take a field for a formula: it begins with =, +, - or @. Quotes do not help.
    /// </summary>
    /// <param name="field">Its text.</param>
    public static bool BeginsAsFormula(string field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return field.AsSpan().TrimStart() is ['=' or '+' or '-' or '@', ..];
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
                InputIds.File,
                $"Line {line}: a quote stands inside a field that does not begin with one. Put the whole field "
                    + $"in quotes, and double quotes inside it."
            );
        at = end;
        return field;
    }

    private static string Quoted(string text, ref int at, ref int line)
    {
        int opened = line,
            start = at;
        if (Quoted(text, ref at) is not { } field)
            throw new InputException(
                InputIds.File,
                $"Line {opened}: a quoted field is not closed; the file may be cut short."
            );
        line += text.AsSpan(start, at - start).Count('\n');
        if (at < text.Length && text[at] == '\r')
            at++;
        if (at < text.Length && text[at] is not (',' or '\n'))
            throw new InputException(
                InputIds.File,
                $"Line {line}: text follows a closing quote. Separate fields by commas."
            );
        if (at == text.Length || text[at] == '\n')
            line++;
        return field;
    }

    /// <summary>What stands between quotes, the first of which is next; null when there is no second.</summary>
    private static string? Quoted(string text, ref int at)
    {
        var field = new StringBuilder();
        for (at++; at < text.Length; at++)
            if (text[at] != '"')
                field.Append(text[at]);
            else if (at + 1 < text.Length && text[at + 1] == '"')
                field.Append(text[at++]);
            else
            {
                at++;
                return field.ToString();
            }
        return null;
    }

    private static int PastSpaces(string line, int at)
    {
        while (at < line.Length && line[at] == ' ')
            at++;
        return at;
    }
}
