using CalibGeom.Features.Files;

namespace CalibGeom.Verification.Readings;

/// <summary>Readings as CSV, with commas or semicolons.</summary>
internal static class ReadingsCsv
{
    private const int MostReadings = ReaderLimits.Readings,
        MostProblems = ReaderLimits.ProblemsTold;
    private static readonly string[] Columns = ["feature", "value", "unit", "instrument", "note"];

    internal static ReadingSet Parse(string text, string name)
    {
        var header = new ReadingHeader();
        var readings = new List<Reading>();
        var problems = new List<string>();
        int wrong = 0;
        string[]? columns = null;
        char separator = ',';
        int number = 0;
        foreach (string line in text.TrimStart('\uFEFF').ReplaceLineEndings("\n").Split('\n'))
        {
            number++;
            try
            {
                if (line.TrimStart(' ', '"') is ['#', .. var comment])
                    header.Add(comment.TrimEnd('"', ',', ';', ' '));
                else if (line.Trim(' ', '\t', ',', ';').Length == 0)
                    continue;
                else if (columns is null)
                    (columns, separator) = ToColumns(line);
                else if (ToRow(CsvText.Fields(line, separator), columns, number) is { } row)
                    readings.AddRange(
                        FeatureRange
                            .Expand(separator == ',' ? row : row.WithPoint())
                            .Select(r => r.ToReading() with { File = name })
                    );
            }
            catch (InputException e)
            {
                wrong++;
                if (problems.Count < MostProblems)
                    problems.Add(FormattableString.Invariant($"{name}:{number}: {e.Message}"));
                if (columns is null && !line.TrimStart().StartsWith('#'))
                    break;
            }
            if (readings.Count > MostReadings)
                throw new InputException(
                    InputIds.Readings,
                    $"{name}: more than {MostReadings} readings. Split the file by print."
                );
        }
        if (problems.Count > 0)
            throw new InputException(InputIds.Readings, [.. problems, .. More(wrong - problems.Count)]);
        if (columns is null)
            throw new InputException(
                InputIds.Readings,
                $"{name} has no readings. Begin it with the line feature,value,unit,instrument,note."
            );
        try
        {
            return header.ToSet(readings);
        }
        catch (InputException e)
        {
            throw new InputException(InputIds.Readings, $"{name}: {e.Message}", e);
        }
    }

    private static string[] More(int count) =>
        count switch
        {
            <= 0 => [],
            1 => ["(And one more line cannot be read.)"],
            _ => [$"(And {count} more lines cannot be read.)"],
        };

    private static (string[] Columns, char Separator) ToColumns(string line)
    {
        char separator =
            line.Contains(';') ? ';'
            : line.Contains('\t') && !line.Contains(',') ? '\t'
            : ',';
        string[] columns = CsvText.Fields(line, separator).Select(c => c.ToLowerInvariant()).ToArray();
        if (Array.Find(columns, c => !Columns.Contains(c, StringComparer.Ordinal)) is { } unknown)
            throw new InputException(
                InputIds.Readings,
                $"the column \"{unknown}\" is not known. Begin with the line {string.Join(',', Columns)}; the "
                    + $"first two are required."
            );
        if (columns.Distinct().Count() < columns.Length || !columns.Contains("feature") || !columns.Contains("value"))
            throw new InputException(
                InputIds.Readings,
                $"the header needs the columns feature and value, each column once. Begin with the line "
                    + $"{string.Join(',', Columns)}."
            );
        return (columns, separator);
    }

    /// <summary>The row, or null when its value has not been filled in.</summary>
    private static ReadingRow? ToRow(IReadOnlyList<string> fields, string[] columns, int line)
    {
        string Field(string column) =>
            Array.IndexOf(columns, column) is var i && i >= 0 && i < fields.Count ? fields[i] : "";
        string feature = Field("feature"),
            value = Field("value"),
            unit = Field("unit");
        if (fields.Count > columns.Length)
            throw new InputException(InputIds.Readings, TooMany(fields, columns, feature, value));
        return value.Length == 0
            ? null
            : new ReadingRow(feature, value, unit, Field("instrument"), Field("note"), line);
    }

    private static string TooMany(IReadOnlyList<string> fields, string[] columns, string feature, string value)
    {
        int after = Array.IndexOf(columns, "value") + 1;
        bool comma = fields[after].Length > 0 && fields[after].All(char.IsAsciiDigit);
        return comma
            ? $"{feature}: was {value},{fields[after]} meant as a decimal comma? Write {value}.{fields[after]}, "
                + $"with a decimal point."
            : $"{fields.Count} fields where the header has {columns.Length}. Put fields that hold the separator "
                + $"in double quotes.";
    }
}
