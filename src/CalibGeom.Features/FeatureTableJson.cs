using System.Text.Encodings.Web;
using System.Text.Json;
using CalibGeom.Features.Files;

namespace CalibGeom.Features;

/// <summary>
/// Feature tables as JSON with all they hold: <c>{"digest": "...", "features": [{"feature": "box1.outside.x",
/// "nominal": 8, "unit": "mm", "axis": "x", "how": "...", "faces": "outside", "step": "outside"}]}</c>, with the names
/// of <see cref="FeatureTableCsv"/>; fits have <c>mates</c>, columns a <c>headDiameter</c>, counts the heights of their
/// <c>openings</c>. Only the first three names are needed. UTF-8, indented, lines ending in LF.
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
        return JsonSerializer.Serialize(FeatureTableDocument.Of(table), Context.FeatureTableDocument) + "\n";
    }

    /// <summary>Writes a table.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="table">The table.</param>
    /// <exception cref="IOException">Writing failed.</exception>
    public static void Write(Stream stream, FeatureTable table)
    {
        ArgumentNullException.ThrowIfNull(stream);
        stream.Write(System.Text.Encoding.UTF8.GetBytes(ToText(table)));
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
        FeatureTableDocument? document;
        try
        {
            document = JsonSerializer.Deserialize(text, Context.FeatureTableDocument);
        }
        catch (JsonException e)
        {
            throw new InputException(
                InputIds.FeatureTable,
                "here stands a name or value that a feature table does not have, or a name that it needs is missing. Take "
                    + "the JSON that was written for the object.",
                new InputPlace(
                    Line: (int)(e.LineNumber ?? 0) + 1,
                    Column: (int)(e.BytePositionInLine ?? 0) + 1,
                    Path: e.Path ?? "$"
                ),
                e
            );
        }
        if (document?.Features is not { } rows)
            throw new InputException(
                InputIds.FeatureTable,
                "a feature table has a list \"features\". Take the JSON that was written for the object.",
                new InputPlace(Path: "$")
            );
        if (document.Digest is { } digest && !FeatureCheck.IsDigest(digest))
            throw new InputException(
                InputIds.FeatureTable,
                $"a digest is 16 hex digits, not \"{digest}\".",
                new InputPlace(Path: "$.digest")
            );
        return new FeatureTable(Check(rows), document.Digest);
    }

    private static List<Feature> Check(FeatureDocument?[] rows)
    {
        var features = new List<Feature>();
        var ids = new HashSet<FeatureId>();
        foreach (FeatureDocument? row in rows)
        {
            try
            {
                Feature feature = (
                    row ?? throw new InputException(InputIds.FeatureTable, "null is no feature. Leave it out.")
                ).ToFeature();
                if (!ids.Add(feature.Id))
                    throw new InputException(
                        InputIds.FeatureTable,
                        $"feature {feature.Id} stands twice. Keep one of them."
                    );
                features.Add(feature);
            }
            catch (InputException e)
            {
                throw new InputException(
                    InputIds.FeatureTable,
                    e.Sentence,
                    new InputPlace(Path: $"$.features[{features.Count}]"),
                    e
                );
            }
        }
        RequireMates(features, ids);
        return features;
    }

    /// <summary>A fit whose faces are not in the table would be passed over in silence.</summary>
    private static void RequireMates(List<Feature> features, HashSet<FeatureId> ids)
    {
        for (int i = 0; i < features.Count; i++)
            foreach (FeatureId face in features[i].Mates.SelectMany(m => new[] { m.Inner, m.Outer }))
                if (!ids.Contains(face))
                    throw new InputException(
                        InputIds.FeatureTable,
                        $"{face} is a mate of {features[i].Id} and stands nowhere in the table. Add its row, or correct its id.",
                        new InputPlace(Path: $"$.features[{i}].mates")
                    );
    }

    /// <summary>The same from a stream that is only ever read asynchronously.</summary>
    /// <param name="stream">Where from; stays open.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="InputException">As for <see cref="Read"/>.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Task<FeatureTable> ReadAsync(Stream stream, CancellationToken cancellation = default) =>
        AsyncStreams.ReadAsync(stream, FeatureTableCsv.MaximumBytes, Read, cancellation);

    /// <summary>The same to a stream that is only ever written asynchronously.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="table">The table.</param>
    /// <param name="cancellation">Stops the writing.</param>
    /// <exception cref="IOException">Writing failed.</exception>
    public static Task WriteAsync(Stream stream, FeatureTable table, CancellationToken cancellation = default) =>
        AsyncStreams.WriteAsync(stream, to => Write(to, table), cancellation);
}
