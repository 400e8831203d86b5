using System.Text.Json;
using System.Text.Json.Nodes;

namespace CalibGeom.Cli.Shared;

/// <summary>
/// Numbers of results without digits that mean nothing: six decimals (a nanometre, a microsecond) or, below one, six
/// digits. What is no finite number is null.
/// </summary>
internal static class PlainNumbers
{
    private const int Digits = 6;

    // A spec and a line of a log are quoted as they are.
    private static readonly string[] Quoted = ["spec", "trial"];

    /// <summary>A result with plain numbers.</summary>
    internal static JsonNode? Of(JsonNode? node) =>
        node switch
        {
            JsonObject o => new JsonObject(
                o.Select(p => KeyValuePair.Create(p.Key, Quoted.Contains(p.Key) ? p.Value?.DeepClone() : Of(p.Value)))
            ),
            JsonArray a => new JsonArray(a.Select(Of).ToArray()),
            JsonValue v when v.GetValueKind() == JsonValueKind.Number && v.TryGetValue(out double number) => Of(number),
            _ => node?.DeepClone(),
        };

    /// <summary>A plain number.</summary>
    internal static JsonNode? Of(double value)
    {
        if (!double.IsFinite(value))
            return null;
        if (value == 0 || Math.Abs(value) >= 1)
            return Math.Round(value, Digits) + 0.0;
        int decimals = Digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        return decimals > 15 ? value : Math.Round(value, Math.Max(Digits, decimals));
    }
}
