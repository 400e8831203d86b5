using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace CalibGeom.TestObjects.Specs;

/// <summary>
/// Goes through a document token by token, checks every name and value, and lays the values over a spec.
/// </summary>
internal sealed class SpecScanner
{
    private const int Depth = 8;

    private readonly byte[] bytes;
    private readonly SpecLayers layers;

    private SpecScanner(byte[] bytes, SpecLayers layers)
    {
        this.bytes = bytes;
        this.layers = layers;
    }

    internal static JsonReaderOptions ReaderOptions =>
        new()
        {
            AllowTrailingCommas = true,
            CommentHandling = JsonCommentHandling.Skip,
            MaxDepth = Depth,
        };

    /// <exception cref="InputException">Not a spec.</exception>
    internal static void Scan(string text, SpecLayers layers)
    {
        var scanner = new SpecScanner(Encoding.UTF8.GetBytes(text), layers);
        var reader = new Utf8JsonReader(scanner.bytes, ReaderOptions);
        try
        {
            scanner.Document(ref reader);
        }
        catch (JsonException e)
        {
            long offset = JsonPlace.Offset(scanner.bytes, e.LineNumber ?? 0, e.BytePositionInLine ?? 0);
            throw new InputException(
                InputIds.Spec,
                $"{JsonPlace.Reason(e)}{JsonPlace.CommaHint(scanner.bytes, offset)}",
                JsonPlace.Of(scanner.bytes, offset),
                e
            );
        }
    }

    /// <summary>
    /// Reads on to the end of the text; the reader itself refuses anything that follows but white space and comments.
    /// </summary>
    internal static void RequireEnd(ref Utf8JsonReader reader) => reader.Read();

    private void Document(ref Utf8JsonReader reader)
    {
        if (!reader.Read())
            throw new JsonException("The document is empty.");
        if (reader.TokenType != JsonTokenType.StartObject)
            throw Fail(
                "$",
                reader.TokenStartIndex,
                $"a spec is an object in braces, not {SpecValue.Name(reader.TokenType)}."
            );
        var seen = new HashSet<string>(StringComparer.Ordinal);
        while (Name(ref reader, "$", seen, out string name, out long offset))
        {
            string path = $"$.{name}";
            reader.Read();
            if (name == "$schema")
                SpecValue.RequireString(ref reader, problem => Fail(path, offset, problem));
            else if (name == SpecParameters.Title.Name)
                Parameter(ref reader, SpecParameters.Title, path);
            else
                Group(
                    ref reader,
                    SpecParameters.FindGroup(name) ?? throw Fail(path, offset, SpecNames.Unknown(name, null)),
                    path
                );
        }
        RequireEnd(ref reader);
    }

    private void Group(ref Utf8JsonReader reader, SpecGroup group, string path)
    {
        long start = reader.TokenStartIndex;
        if (reader.TokenType == JsonTokenType.Null)
        {
            if (!group.Optional)
                throw Fail(path, start, SpecNames.Required(group));
            layers.Remove(group);
            return;
        }
        if (reader.TokenType != JsonTokenType.StartObject)
            throw Fail(
                path,
                start,
                $"an object in braces{(group.Optional ? " or null" : "")} is needed, not "
                    + $"{SpecValue.Name(reader.TokenType)}."
            );
        layers.Open(group);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        while (Name(ref reader, path, seen, out string name, out long offset))
        {
            SpecParameter parameter =
                group.Find(name) ?? throw Fail($"{path}.{name}", offset, SpecNames.Unknown(name, group));
            reader.Read();
            Parameter(ref reader, parameter, $"{path}.{name}");
        }
    }

    private void Parameter(ref Utf8JsonReader reader, SpecParameter parameter, string path)
    {
        long start = reader.TokenStartIndex;
        JsonNode value = SpecValue.Read(
            ref reader,
            parameter,
            path,
            (where, offset, problem) => Fail(where, offset, problem)
        );
        layers.Set(parameter, value, PlaceOf(path, start));
    }

    private bool Name(ref Utf8JsonReader reader, string owner, HashSet<string> seen, out string name, out long offset)
    {
        reader.Read();
        offset = reader.TokenStartIndex;
        name = "";
        if (reader.TokenType == JsonTokenType.EndObject)
            return false;
        long at = offset;
        string read = SpecValue.Text(ref reader, problem => Fail(owner, at, problem));
        if (!seen.Add(read))
            throw Fail($"{owner}.{read}", offset, "this name stands twice; keep one.");
        name = read;
        return true;
    }

    private InputException Fail(string path, long offset, string problem) =>
        new(InputIds.Spec, problem, PlaceOf(path, offset));

    private InputPlace PlaceOf(string path, long offset) =>
        JsonPlace.Of(bytes, offset) with
        {
            Path = JsonPlace.Shorten(path),
        };
}
