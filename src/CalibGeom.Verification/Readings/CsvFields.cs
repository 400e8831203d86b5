using System.Text;

namespace CalibGeom.Verification.Readings;

/// <summary>Splits one line of CSV (RFC 4180 quoting, fields do not run over lines) and quotes fields.</summary>
internal static class CsvFields
{
    internal static List<string> Split(string line, char separator)
    {
        var fields = new List<string>();
        var field = new StringBuilder();
        int i = 0;
        while (true)
        {
            while (i < line.Length && line[i] == ' ')
                i++;
            i = i < line.Length && line[i] == '"' ? Quoted(line, i + 1, field) : Plain(line, i, separator, field);
            while (i < line.Length && line[i] == ' ')
                i++;
            if (i < line.Length && line[i] != separator)
                throw new InputException("text follows a closing quote. Double the quotes inside a quoted field.");
            fields.Add(field.ToString());
            field.Clear();
            if (i >= line.Length)
                return fields;
            i++;
        }
    }

    internal static string Quote(string field) =>
        field.AsSpan().IndexOfAny(",;\"#") >= 0
            ? $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : field;

    private static int Plain(string line, int start, char separator, StringBuilder field)
    {
        int end = line.IndexOf(separator, start);
        if (end < 0)
            end = line.Length;
        field.Append(line[start..end].Trim());
        return end;
    }

    private static int Quoted(string line, int i, StringBuilder field)
    {
        while (i < line.Length)
        {
            if (line[i] != '"')
                field.Append(line[i++]);
            else if (i + 1 < line.Length && line[i + 1] == '"')
            {
                field.Append('"');
                i += 2;
            }
            else
                return i + 1;
        }
        throw new InputException("a quote is opened and not closed on the line.");
    }
}
