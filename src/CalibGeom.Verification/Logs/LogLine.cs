using System.Text;
using System.Text.Json;

namespace CalibGeom.Verification.Logs;

/// <summary>What one line of a log is: a trial, a word that takes one back, or the torn beginning of a line.</summary>
internal sealed record LogLine(Trial? Trial, int? Undo)
{
    /// <summary>A line that was cut off while it was written.</summary>
    internal static LogLine Torn { get; } = new(null, null);

    /// <exception cref="InputException">None of them.</exception>
    internal static LogLine Parse(string text, string where)
    {
        if (IsTorn(text))
            return Torn;
        return RetractionJson.TryParse(text, where) is { } number
            ? new LogLine(null, number)
            : new LogLine(TrialJson.Parse(text, where), null);
    }

    /// <summary>Whether a text is the beginning of a JSON object that ends too early, and sound up to there.</summary>
    private static bool IsTorn(string text)
    {
        if (!text.TrimStart().StartsWith('{'))
            return false;
        var reader = new Utf8JsonReader(Encoding.UTF8.GetBytes(text), isFinalBlock: false, state: default);
        try
        {
            while (reader.Read())
                if (reader.CurrentDepth == 0 && reader.TokenType == JsonTokenType.EndObject)
                    return false;
            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }
}
