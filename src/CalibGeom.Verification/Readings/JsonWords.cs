using System.Text.Json;
using System.Text.RegularExpressions;

namespace CalibGeom.Verification.Readings;

/// <summary>What a JSON reader has to say, in words that mean something to who wrote the text.</summary>
internal static partial class JsonWords
{
    internal static string Of(JsonException e)
    {
        string said = e.Message.Split('\n')[0].Split(" Path:")[0];
        string[] quoted = [.. Quoted().Matches(said).Select(m => m.Groups[1].Value)];
        if (said.Contains("could not be converted", StringComparison.Ordinal))
            return "the value is of another kind.";
        if (said.Contains("could not be mapped", StringComparison.Ordinal))
            return $"the name \"{quoted[0]}\" is not known.";
        if (said.Contains("missing required", StringComparison.Ordinal))
            return $"{string.Join(", ", quoted[1..].Select(q => $"\"{q}\""))} is missing.";
        if (said.Contains("uplicate", StringComparison.Ordinal) && quoted.Length > 0)
            return $"the name \"{quoted[0]}\" stands twice.";
        return
            said.Contains("CalibGeom", StringComparison.Ordinal) || said.Contains("System.", StringComparison.Ordinal)
            ? "it cannot be read."
            : said;
    }

    [GeneratedRegex("'([^']*)'")]
    private static partial Regex Quoted();
}
