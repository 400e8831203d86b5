using System.Globalization;
using System.Text;
using CalibGeom.Features.Files;

namespace CalibGeom.Features;

/// <summary>
/// Feature tables as CSV: an optional first line <c># digest 0123456789abcdef</c>, the header
/// <c>feature,nominal,unit,axis,how</c>, then one
/// row a feature. UTF-8 without a byte order mark, quoting after RFC 4180, lines ending in LF, numbers in the invariant
/// culture and as short
/// as they can be without losing a bit. Reading also takes a byte order mark, CRLF, empty lines and other lines that
/// begin with <c>#</c>
/// before the header. It is the table for people: heads of columns, and mates and openings that do not follow from the
/// ids, stand in <see cref="FeatureTableJson"/> alone.
/// </summary>
public static class FeatureTableCsv
{
    /// <summary>The most bytes that are read: 16 MiB.</summary>
    public const int MaximumBytes = ReaderLimits.FeatureTableBytes;

    private const string Header = "feature,nominal,unit,axis,how";

    /// <summary>Writes a table.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="table">The table.</param>
    /// <exception cref="IOException">Writing failed.</exception>
    public static void Write(Stream stream, FeatureTable table)
    {
        ArgumentNullException.ThrowIfNull(stream);
        stream.Write(Encoding.UTF8.GetBytes(ToText(table)));
    }

    /// <summary>A table as text.</summary>
    /// <param name="table">The table.</param>
    public static string ToText(FeatureTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        var text = new StringBuilder();
        if (table.Digest is { } digest)
            text.Append("# digest ").Append(digest).Append('\n');
        text.Append(Header).Append('\n');
        foreach (Feature f in table)
            text.AppendJoin(
                    ',',
                    CsvText.Quote(f.Id),
                    f.Nominal.ToString("R", CultureInfo.InvariantCulture),
                    CsvText.Quote(f.Unit),
                    CsvText.Quote(f.Axis),
                    CsvText.Quote(f.How)
                )
                .Append('\n');
        return text.ToString();
    }

    /// <summary>Reads a table.</summary>
    /// <param name="stream">Where from; stays open.</param>
    /// <exception cref="InputException">Not such a table; the message names the line.</exception>
    /// <exception cref="IOException">Reading failed.</exception>
    public static FeatureTable Read(Stream stream) =>
        Parse(InputBytes.Utf8(InputBytes.Read(stream, MaximumBytes, "a feature table"), "A feature table"));

    /// <summary>Reads a table from text.</summary>
    /// <param name="text">The whole text.</param>
    /// <exception cref="InputException">Not such a table; the message names the line.</exception>
    public static FeatureTable Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string rest = SkipComments(text, out string? digest, out int line);
        using IEnumerator<CsvRow> rows = CsvText.Rows(rest, line).GetEnumerator();
        if (!rows.MoveNext() || string.Join(',', rows.Current.Fields) != Header)
            throw At(
                rest.Length == 0 ? line : rows.Current.Line,
                $"a feature table begins with the header {Header}. Take the .features.csv that was written beside "
                    + "the object."
            );
        var features = new List<Feature>();
        var ids = new HashSet<FeatureId>();
        while (rows.MoveNext())
        {
            Feature feature = ToFeature(rows.Current);
            if (!ids.Add(feature.Id))
                throw At(rows.Current.Line, $"feature {feature.Id} stands twice. Keep one of the rows.");
            features.Add(feature);
        }
        return new FeatureTable(features, digest);
    }

    private static string SkipComments(string text, out string? digest, out int line)
    {
        digest = null;
        line = 1;
        int at = text.StartsWith('\uFEFF') ? 1 : 0;
        for (; at < text.Length && text[at] == '#'; line++)
        {
            int newLine = text.IndexOf('\n', at),
                end = newLine < 0 ? text.Length : newLine;
            string comment = text[(at + 1)..end].Trim();
            if (comment.StartsWith("digest", StringComparison.Ordinal))
                digest = ToDigest(comment["digest".Length..].Trim(), line);
            at = newLine < 0 ? text.Length : newLine + 1;
        }
        return text[at..];
    }

    private static string ToDigest(string text, int line) =>
        FeatureCheck.IsDigest(text) ? text : throw At(line, $"a digest is 16 hex digits, not \"{text}\".");

    private static InputException At(int line, string sentence, Exception? cause = null) =>
        new(InputIds.FeatureTable, sentence, new InputPlace(Line: line), cause);

    private static Feature ToFeature(CsvRow row)
    {
        if (row.Fields is not [var id, var nominal, var unit, var axis, var how])
            throw At(
                row.Line,
                $"{row.Fields.Count} fields where {Header} has 5. Put fields that hold commas in quotes."
            );
        if (!double.TryParse(nominal, NumberStyles.Float, CultureInfo.InvariantCulture, out double value))
            throw At(row.Line, $"the nominal \"{nominal}\" is no number. Write it with a decimal point, such as 8.05.");
        try
        {
            return FeatureCheck.Checked(
                new Feature(FeatureCheck.ToId(id), value, unit, axis, FeatureCheck.ToInstruction(how))
            );
        }
        catch (InputException e)
        {
            throw At(row.Line, e.Sentence, e);
        }
    }

    /// <summary>The same from a stream that is only ever read asynchronously.</summary>
    /// <param name="stream">Where from; stays open.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="InputException">As for <see cref="Read"/>.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Task<FeatureTable> ReadAsync(Stream stream, CancellationToken cancellation = default) =>
        AsyncStreams.ReadAsync(stream, MaximumBytes, Read, cancellation);

    /// <summary>The same to a stream that is only ever written asynchronously.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="table">The table.</param>
    /// <param name="cancellation">Stops the writing.</param>
    /// <exception cref="IOException">Writing failed.</exception>
    public static Task WriteAsync(Stream stream, FeatureTable table, CancellationToken cancellation = default) =>
        AsyncStreams.WriteAsync(stream, to => Write(to, table), cancellation);
}
