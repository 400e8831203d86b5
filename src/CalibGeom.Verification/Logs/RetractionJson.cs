using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace CalibGeom.Verification.Logs;

/// <summary>
/// The line that takes a trial back: <c>{"undo": 3, "date": "2026-03-01"}</c>, with the number of the trial.
/// </summary>
internal static class RetractionJson
{
    internal static string Write(int number, DateOnly date) =>
        $"{{\"undo\":{number.ToString(CultureInfo.InvariantCulture)},\"date\":\"{date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}\"}}";

    /// <summary>The number of the trial, or null when the line takes nothing back.</summary>
    /// <exception cref="InputException">It takes something back, but not a trial of this log.</exception>
    internal static int? TryParse(string text, string where)
    {
        JsonObject? line;
        try
        {
            line = JsonNode.Parse(text) as JsonObject;
        }
        catch (JsonException)
        {
            return null;
        }
        if (Undo(line) is not { } undo)
            return null;
        if (undo is JsonValue value && value.TryGetValue(out int number) && number >= 1 && line!.All(IsKnown))
            return number;
        throw new InputException(
            InputIds.Log,
            $"{where}: a line that takes a trial back is {{\"undo\": NUMBER, \"date\": \"2026-03-01\"}} with the "
                + "number of the trial. Mend the line."
        );
    }

    /// <summary>What a line takes back; null when it is another line or cannot be taken apart.</summary>
    private static JsonNode? Undo(JsonObject? line)
    {
        try
        {
            return line?["undo"];
        }
        catch (Exception e) when (e is ArgumentException or InvalidOperationException)
        {
            return null; // A name stands twice or is no Unicode; as a trial the line is refused in words.
        }
    }

    private static bool IsKnown(KeyValuePair<string, JsonNode?> member) => member.Key is "undo" or "date";
}
