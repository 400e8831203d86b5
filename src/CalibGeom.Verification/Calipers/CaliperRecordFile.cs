using System.Globalization;
using CalibGeom.Features.Files;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Calipers;

/// <summary>
/// A caliper record as CSV: lines <c># caliper NAME</c> and <c># valid DAYS</c>, then the header
/// <c>date,jaw,gauge,reading,part,person</c> and one row a reading; gauge and reading in mm.
/// </summary>
public static class CaliperRecordFile
{
    /// <summary>
    /// How far a reading may lie from its gauge, mm: beyond it a digit or the gauge is wrong, not the caliper. Common
    /// practice, no source.
    /// </summary>
    public const double FarthestFromGauge = 0.5;

    private const string Header = "date,jaw,gauge,reading,part,person";
    private const int MostBytes = ReaderLimits.CaliperRecordBytes;

    /// <summary>Reads a file.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="InputException">It is missing or cannot be understood; the message names file and
    /// line.</exception>
    public static CaliperRecord Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (!File.Exists(path))
            throw new InputException(
                InputIds.CaliperRecord,
                $"{path}: there is no such file. Name a caliper record; the guide shows one."
            );
        try
        {
            return Parse(InputBytes.TextOf(path, MostBytes, "a caliper record"), path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(
                InputIds.CaliperRecord,
                $"{path}: the caliper record cannot be read: {e.Message}",
                e
            );
        }
    }

    /// <summary>Reads text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="name">What messages call it.</param>
    /// <exception cref="InputException">It cannot be understood; the message names the line.</exception>
    public static CaliperRecord Parse(string text, string name = "the caliper record")
    {
        ArgumentNullException.ThrowIfNull(text);
        var readings = new List<CaliperReading>();
        string caliper = "";
        int valid = CaliperRecord.DefaultValidDays,
            number = 0;
        bool headed = false;
        foreach (string raw in text.TrimStart('\uFEFF').ReplaceLineEndings("\n").Split('\n'))
        {
            number++;
            string line = raw.Trim();
            string At(string message) => FormattableString.Invariant($"{name}:{number}: {message}");
            if (line.StartsWith("# caliper ", StringComparison.Ordinal))
                caliper = line[10..].Trim();
            else if (line.StartsWith("# valid ", StringComparison.Ordinal))
                valid =
                    Days(line[8..].Trim())
                    ?? throw new InputException(InputIds.CaliperRecord, At("\"# valid\" takes days from 1 to 10000."));
            else if (line.Length == 0 || line[0] == '#')
                continue;
            else if (!headed)
                headed =
                    line == Header
                        ? true
                        : throw new InputException(InputIds.CaliperRecord, At($"the header must be \"{Header}\"."));
            else
                readings.Add(Row(line.Split(','), At));
        }
        return readings.Count > 0
            ? new CaliperRecord(readings, caliper, valid)
            : throw new InputException(
                InputIds.CaliperRecord,
                $"{name} has no readings. Begin it with the line {Header}."
            );
    }

    /// <summary>
    /// Adds rows to a record on disk, in a single write with the file locked: two processes that add at once lose
    /// nothing, and what stands in it stays as it is, byte for byte, a byte order mark too.
    /// </summary>
    /// <param name="path">The record; begun when it does not exist or is empty.</param>
    /// <param name="more">The rows to add, in this order.</param>
    /// <param name="name">The caliper's name; null for none. A record that holds something has its own.</param>
    /// <param name="validDays">For how many days a record counts that begins, 1 to 10000; null for
    /// <see cref="CaliperRecord.DefaultValidDays"/>. A record that holds something says it itself.</param>
    /// <returns>The record with the rows.</returns>
    /// <exception cref="ArgumentException">A name holds a comma or a line break or begins as a formula does, a row is of
    /// neither gauge nor part, or the days are out of range.</exception>
    /// <exception cref="InputException">The record so far cannot be understood, has a name of its own, or cannot be
    /// written; then it stands as before.</exception>
    /// <exception cref="IOException">It cannot be written; it stands as before.</exception>
    public static CaliperRecord Append(
        string path,
        IReadOnlyList<CaliperReading> more,
        string? name = null,
        int? validDays = null
    )
    {
        CaliperRecord? record = null;
        AppendedFile.Append(
            path,
            stream =>
            {
                string before = InputBytes.Utf8(InputBytes.Read(stream, MostBytes, "a caliper record"), path);
                if (before.Length > 0)
                    Parse(before, path);
                if (before.Length > 0 && (name ?? (object?)validDays) is not null)
                    throw new InputException(
                        InputIds.CaliperRecord,
                        $"{path} exists: its name and validity stand in it. Leave name and validity away."
                    );
                string after = WithRows(before, more, name ?? "", validDays ?? CaliperRecord.DefaultValidDays);
                record = Parse(after, path);
                // The line end that an unfinished last line lacks is written with the rows.
                return after[before.Length..].TrimStart('\n');
            }
        );
        return record!;
    }

    /// <summary>A reading from the texts of its six fields, as a row has them.</summary>
    /// <param name="fields">Date, jaw, gauge, reading, part and person; the last four may be empty or missing.</param>
    /// <exception cref="InputException">A field cannot be understood.</exception>
    public static CaliperReading ParseReading(IReadOnlyList<string> fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        return Row([.. fields], message => char.ToUpperInvariant(message[0]) + message[1..]);
    }

    // What stands in the record stays as it is, byte for byte.
    private static string WithRows(string text, IReadOnlyList<CaliperReading> more, string name, int validDays)
    {
        Require.Within(validDays, 1, 10_000, "validity", "days", nameof(validDays));
        string start = text.Length == 0 || text.EndsWith('\n') ? text : text + "\n";
        if (text.Trim().Length == 0)
            start +=
                (Plain(name, nameof(name)).Length > 0 ? $"# caliper {name.Trim()}\n" : "")
                + string.Create(CultureInfo.InvariantCulture, $"# valid {validDays}\n{Header}\n");
        else
            Parse(text);
        string rows = string.Concat(more.Select(r => Row(r) + "\n"));
        return start + rows;
    }

    private static string Row(CaliperReading r)
    {
        if (r.Gauge is null && r.Part.Trim().Length == 0)
            throw new ArgumentException("A reading is of a gauge or of a part; this one names neither.", nameof(r));
        string gauge = r.Gauge is { } size ? size.ToString("R", CultureInfo.InvariantCulture) : "";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{r.Date:yyyy-MM-dd},{ReadingWords.Of(r.Jaw)},{gauge},{r.Value:R},{Plain(r.Part, "part")},{Plain(r.Person, "person")}"
        );
    }

    private static string Plain(string word, string what)
    {
        if (word.AsSpan().IndexOfAny(",\r\n\"") >= 0)
            throw new ArgumentException($"The {what} \"{word}\" holds a comma, a quote or a line break.", what);
        return CsvText.BeginsAsFormula(word)
            ? throw new ArgumentException(
                $"The {what} \"{word}\" begins as a formula does, and a spreadsheet would take it for one. Begin it with a "
                    + "letter or a number.",
                what
            )
            : word.Trim();
    }

    private static int? Days(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int days) && days is >= 1 and <= 10_000
            ? days
            : null;

    private static CaliperReading Row(string[] fields, Func<string, string> at)
    {
        string Field(int i) => i < fields.Length ? fields[i].Trim() : "";
        if (fields.Length > 6)
            throw new InputException(
                InputIds.CaliperRecord,
                at("more than six fields; write sizes with a decimal point.")
            );
        if (
            !DateOnly.TryParseExact(
                Field(0),
                "yyyy-MM-dd",
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out DateOnly date
            )
        )
            throw new InputException(
                InputIds.CaliperRecord,
                at($"the date is \"{Field(0)}\"; write it as 2026-11-25.")
            );
        Jaw jaw =
            ReadingWords.ToJaw(Field(1))
            ?? throw new InputException(
                InputIds.CaliperRecord,
                at($"the jaw is \"{Field(1)}\"; it is one of {ReadingWords.JawList}.")
            );
        double? gauge = Field(2).Length > 0 ? Size(Field(2), "gauge", at) : null;
        if (gauge is null && Field(4).Length == 0)
            throw new InputException(InputIds.CaliperRecord, at("neither a gauge nor a part is named."));
        double reading = Size(Field(3), "reading", at);
        if (gauge is { } of && Math.Abs(reading - of) > FarthestFromGauge)
            throw new InputException(
                InputIds.CaliperRecord,
                at(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"the reading {reading:R} is {Math.Abs(reading - of):0.###} mm from its gauge of {of:R} mm; a "
                            + $"caliper is not wrong by more than {FarthestFromGauge} mm. Correct the digits, or name the "
                            + $"gauge that was read."
                    )
                )
            );
        return new CaliperReading
        {
            Date = date,
            Jaw = jaw,
            Gauge = gauge,
            Value = reading,
            Part = gauge is null ? Field(4) : "",
            Person = Field(5),
        };
    }

    private static double Size(string text, string what, Func<string, string> at) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double value)
        && value is > 0 and <= 1000
            ? value
            : throw new InputException(
                InputIds.CaliperRecord,
                at($"the {what} is \"{text}\"; write mm from above 0 to 1000 with a decimal point.")
            );
}
