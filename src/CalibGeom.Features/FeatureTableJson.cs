using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using CalibGeom.Features.Files;

namespace CalibGeom.Features;

/// <summary>
/// Feature tables as JSON: <c>{"digest": "...", "features": [{"feature": "box1.outside.x", "nominal": 8, "unit": "mm",
/// "axis": "x", "how":
/// "..."}]}</c>, with the names of <see cref="FeatureTableCsv"/>. UTF-8, indented, lines ending in LF.
/// </summary>
public static class FeatureTableJson
{
    // Signs such as the micro sign stand as they are: the text is read as UTF-8, never put into a web page.
    private static readonly FeatureTableJsonContext Context = new(
        new JsonSerializerOptions(FeatureTableJsonContext.Default.Options)
        {
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        }
    );

    /// <summary>A table as text.</summary>
    /// <param name="table">The table.</param>
    public static string ToText(FeatureTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        var rows = table.Select(f => new Row(f.Id, f.Nominal, f.Unit, f.Axis, f.How)).ToArray();
        return JsonSerializer.Serialize(new Document(table.Digest, rows), Context.Document) + "\n";
    }

    /// <summary>Reads a table.</summary>
    /// <param name="stream">Where from; stays open.</param>
    /// <exception cref="InputException">Not such a table; the message names the line.</exception>
    /// <exception cref="IOException">Reading failed.</exception>
    public static FeatureTable Read(Stream stream) =>
        Parse(
            InputBytes.Utf8(InputBytes.Read(stream, FeatureTableCsv.MaximumBytes, "a feature table"), "A feature table")
        );

    /// <summary>Reads a table from text.</summary>
    /// <param name="text">The whole text.</param>
    /// <exception cref="InputException">Not such a table; the message names the line.</exception>
    public static FeatureTable Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        Document? document;
        try
        {
            document = JsonSerializer.Deserialize(text, Context.Document);
        }
        catch (JsonException e)
        {
            string place = FormattableString.Invariant(
                $"{e.Path ?? "$"} (line {(e.LineNumber ?? 0) + 1}, column {(e.BytePositionInLine ?? 0) + 1})"
            );
            throw new InputException(
                $"{place}: not a feature table. Take the JSON that was written for the object.",
                e
            );
        }
        if (document?.Features is not { } rows)
            throw new InputException(
                "$: a feature table has a list \"features\". Take the JSON that was written for the object."
            );
        if (document.Digest is { } digest && !FeatureCheck.IsDigest(digest))
            throw new InputException($"$.digest: a digest is 16 hex digits, not \"{digest}\".");
        return new FeatureTable(Check(rows), document.Digest);
    }

    private static List<Feature> Check(Row[] rows)
    {
        var features = new List<Feature>();
        var ids = new HashSet<string>(StringComparer.Ordinal);
        foreach (Row row in rows)
        {
            string place = $"$.features[{features.Count}]";
            var feature = new Feature(row.Feature, row.Nominal, row.Unit, row.Axis ?? "", row.How ?? "");
            if (FeatureCheck.ProblemOf(feature) is { } problem)
                throw new InputException($"{place}: {problem}");
            if (!ids.Add(feature.Id))
                throw new InputException($"{place}: feature {feature.Id} stands twice. Keep one of them.");
            features.Add(feature);
        }
        return features;
    }

    internal sealed record Document(string? Digest, Row[]? Features);

    internal sealed record Row(
        [property: JsonRequired] string Feature,
        [property: JsonRequired] double Nominal,
        [property: JsonRequired] string Unit,
        string? Axis,
        string? How
    );
}
