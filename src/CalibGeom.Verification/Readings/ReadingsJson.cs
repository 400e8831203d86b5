using System.Text.Json;

namespace CalibGeom.Verification.Readings;

/// <summary>Readings as JSON.</summary>
internal static class ReadingsJson
{
    internal static ReadingSet Parse(string text, string name)
    {
        ReadingsDocument set;
        try
        {
            set =
                JsonSerializer.Deserialize(text.TrimStart('\uFEFF'), ReadingsJsonContext.Default.ReadingsDocument)
                ?? throw new InputException(InputIds.Readings, $"{name} holds null.");
        }
        catch (JsonException e)
        {
            string at = e.LineNumber is { } line
                ? FormattableString.Invariant($":{line + 1}:{(e.BytePositionInLine ?? 0) + 1}")
                : "";
            throw new InputException(InputIds.Readings, $"{name}{at}: {e.Path ?? "$"}: {Reason(e)}", e);
        }
        catch (InvalidOperationException e)
        {
            throw new InputException(InputIds.Readings, $"{name}: a text in it is no Unicode. Write it anew.", e);
        }
        if (set.Readings is null)
            throw new InputException(InputIds.Readings, $"{name} has no \"readings\".");
        try
        {
            return ToSet(set, name);
        }
        catch (ArgumentException e)
        {
            throw InputException.Because(InputIds.Readings, e, $"{name}: ");
        }
    }

    private static ReadingSet ToSet(ReadingsDocument set, string name)
    {
        var readings = new List<Reading>();
        for (int i = 0; i < set.Readings!.Count; i++)
            readings.AddRange(
                At(
                    $"{name} $.readings[{i}]",
                    () =>
                        ToReadings(
                            set.Readings[i] ?? throw new InputException(InputIds.Readings, "null is no reading.")
                        )
                )
            );
        IEnumerable<Instrument> instruments = (set.Instruments ?? []).Select(
            (n, i) => At($"{name} $.instruments[{i}]", () => ToInstrument(n))
        );
        PartState? state = set.State is null
            ? null
            : ReadingWords.ToState(set.State)
                ?? throw new InputException(
                    InputIds.Readings,
                    $"{name} $.state: the state is \"{set.State}\"; it is one of {ReadingWords.StateList}."
                );
        string? digest = set.Digest is null ? null : At($"{name} $.digest", () => ReadingHeader.ToDigest(set.Digest));
        return new ReadingSet(
            readings,
            instruments.ToArray(),
            digest,
            set.Temperature,
            state,
            set.Expansion,
            set.Material is null ? null : At($"{name} $.material", () => ReadingHeader.ToMaterial(set.Material)),
            set.Comments
        );
    }

    private static Instrument ToInstrument(ReadingsDocument.InstrumentDocument? node) =>
        node is null
            ? throw new InputException(InputIds.Readings, "null is no instrument.")
            : ReadingHeader.ToInstrument(
                node.Name ?? "",
                node.Resolution,
                node.Mpe,
                node.Repeatability,
                node.Jaw,
                node.Variation
            ) with
            {
                RecordFile = node.Record,
            };

    private static Reading[] ToReadings(ReadingsDocument.ReadingDocument node)
    {
        string value = node.Value.ValueKind switch
        {
            JsonValueKind.Number => node.Value.GetRawText(),
            JsonValueKind.String => Text(node.Value),
            _ => throw new InputException(InputIds.Readings, "\"value\" is missing or neither a number nor a word."),
        };
        var row = new ReadingRow(node.Feature ?? "", value, node.Unit ?? "", node.Instrument ?? "", node.Note ?? "", 0);
        return FeatureRange.Expand(row).Select(r => r.ToReading()).ToArray();
    }

    private static string Text(JsonElement value)
    {
        try
        {
            return value.GetString()!;
        }
        catch (InvalidOperationException e)
        {
            throw new InputException(InputIds.Readings, "\"value\" is no Unicode. Write it anew.", e);
        }
    }

    private static T At<T>(string place, Func<T> read)
    {
        try
        {
            return read();
        }
        catch (InputException e)
        {
            throw new InputException(InputIds.Readings, $"{place}: {e.Message}", e);
        }
    }

    private static string Reason(JsonException e)
    {
        return e.Message.Contains("could not be mapped", StringComparison.Ordinal)
            ? "this name is not known. Names are those of the CSV form: digest, temperature, state, expansion, "
                + "material, comments, instruments, readings."
            : JsonWords.Of(e);
    }
}
