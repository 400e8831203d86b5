using System.Text.RegularExpressions;

namespace CalibGeom.Cli.Tests.Guides;

/// <summary>The words of a command line as a shell takes them apart.</summary>
internal static partial class GuideWords
{
    internal static string[] Of(string line) =>
        [.. Words().Matches(line).Select(m => m.Value.Replace("\"", "", StringComparison.Ordinal))];

    [GeneratedRegex("""(?:[^\s"]|"[^"]*")+""")]
    private static partial Regex Words();
}
