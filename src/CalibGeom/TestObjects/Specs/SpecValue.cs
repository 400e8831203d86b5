using System.Text.Json;
using System.Text.Json.Nodes;

namespace CalibGeom.TestObjects.Specs;

/// <summary>Reads and checks the value of one parameter.</summary>
internal static class SpecValue
{
    /// <summary>Makes the error for a path, an offset and a problem.</summary>
    internal delegate InputException Refusal(string path, long offset, string problem);

    /// <summary>The value that the reader stands on, checked; the reader ends on its last token.</summary>
    internal static JsonNode Read(ref Utf8JsonReader reader, SpecParameter parameter, string path, Refusal refuse) =>
        parameter.Kind switch
        {
            SpecKind.Text or SpecKind.Word => Text(ref reader, parameter, path, refuse),
            SpecKind.Count => Count(ref reader, parameter, path, refuse),
            SpecKind.Number => Number(ref reader, parameter, path, refuse),
            SpecKind.Numbers => List(ref reader, parameter, path, refuse, Number),
            SpecKind.PerAxis => PerAxis(ref reader, parameter, path, refuse),
            SpecKind.PerAxisList => List(ref reader, parameter, path, refuse, PerAxis),
            _ => Fixed(ref reader, parameter, path, refuse, 3),
        };

    /// <summary>A kind of token in words.</summary>
    internal static string Name(JsonTokenType token) =>
        token switch
        {
            JsonTokenType.StartObject => "an object",
            JsonTokenType.StartArray => "a list",
            JsonTokenType.String => "a string",
            JsonTokenType.Number => "a number",
            JsonTokenType.True or JsonTokenType.False => "true or false",
            JsonTokenType.Null => "null",
            _ => "something else",
        };

    internal static void RequireString(ref Utf8JsonReader reader, Func<string, InputException> refuse)
    {
        if (reader.TokenType != JsonTokenType.String)
            throw refuse($"a string is needed, not {Name(reader.TokenType)}.");
    }

    /// <summary>The string or name that the reader stands on.</summary>
    internal static string Text(ref Utf8JsonReader reader, Func<string, InputException> refuse)
    {
        try
        {
            return reader.GetString()!;
        }
        catch (InvalidOperationException)
        {
            throw refuse("half of a surrogate pair stands alone.");
        }
    }

    private delegate JsonNode Entry(ref Utf8JsonReader reader, SpecParameter parameter, string path, Refusal refuse);

    private static JsonNode Text(ref Utf8JsonReader reader, SpecParameter parameter, string path, Refusal refuse)
    {
        long start = reader.TokenStartIndex;
        RequireString(ref reader, problem => refuse(path, start, problem));
        string text = Text(ref reader, problem => refuse(path, start, problem));
        string? trouble =
            parameter.Kind == SpecKind.Word
                ? SpecNames.ProblemOfWord(text, parameter)
                : parameter.ProblemOf(text, parameter.Path);
        return trouble is null ? JsonValue.Create(text) : throw refuse(path, start, trouble);
    }

    private static JsonNode Number(ref Utf8JsonReader reader, SpecParameter parameter, string path, Refusal refuse)
    {
        long start = reader.TokenStartIndex;
        if (reader.TokenType != JsonTokenType.Number)
            throw refuse(path, start, $"a number is needed, not {Name(reader.TokenType)}.");
        double value = reader.GetDouble() + 0.0;
        return parameter.ProblemOf(value, parameter.Path) is { } problem
            ? throw refuse(path, start, problem)
            : JsonValue.Create(value);
    }

    private static JsonNode Count(ref Utf8JsonReader reader, SpecParameter parameter, string path, Refusal refuse)
    {
        long start = reader.TokenStartIndex;
        double value = Number(ref reader, parameter, path, refuse).GetValue<double>();
        return double.IsInteger(value)
            ? JsonValue.Create((int)value)
            : throw refuse(
                path,
                start,
                FormattableString.Invariant($"{parameter.Path} is {value}; a whole number is needed.")
            );
    }

    private static JsonNode PerAxis(ref Utf8JsonReader reader, SpecParameter parameter, string path, Refusal refuse)
    {
        if (reader.TokenType == JsonTokenType.Number)
            return Number(ref reader, parameter, path, refuse);
        return reader.TokenType == JsonTokenType.StartArray
            ? Fixed(ref reader, parameter, path, refuse, 2)
            : throw refuse(
                path,
                reader.TokenStartIndex,
                $"a number or [x, y] is needed, not {Name(reader.TokenType)}."
            );
    }

    private static JsonArray Fixed(
        ref Utf8JsonReader reader,
        SpecParameter parameter,
        string path,
        Refusal refuse,
        int count
    )
    {
        long start = reader.TokenStartIndex;
        JsonArray list = Entries(ref reader, parameter, path, refuse, Number, count);
        return list.Count == count
            ? list
            : throw refuse(path, start, $"{parameter.Path} has {list.Count} numbers; {count} are needed.");
    }

    private static JsonArray List(
        ref Utf8JsonReader reader,
        SpecParameter parameter,
        string path,
        Refusal refuse,
        Entry entry
    )
    {
        long start = reader.TokenStartIndex;
        JsonArray list = Entries(ref reader, parameter, path, refuse, entry, parameter.MostEntries);
        return parameter.ProblemOfCount(list.Count, parameter.Path) is { } problem
            ? throw refuse(path, start, problem)
            : list;
    }

    /// <summary>
    /// Entries up to a limit; one beyond it is an error at once, so that a huge list is answered quickly.
    /// </summary>
    private static JsonArray Entries(
        ref Utf8JsonReader reader,
        SpecParameter parameter,
        string path,
        Refusal refuse,
        Entry entry,
        int most
    )
    {
        if (reader.TokenType != JsonTokenType.StartArray)
            throw refuse(path, reader.TokenStartIndex, $"a list in brackets is needed, not {Name(reader.TokenType)}.");
        var list = new JsonArray();
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
        {
            if (list.Count == most)
                throw refuse(
                    $"{path}[{list.Count}]",
                    reader.TokenStartIndex,
                    $"{parameter.Path} has more than {most} entries, the most allowed."
                );
            list.Add(entry(ref reader, parameter, $"{path}[{list.Count}]", refuse));
        }
        return list;
    }
}
