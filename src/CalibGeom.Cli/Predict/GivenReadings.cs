using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Predict;

/// <summary>Readings that stand on the command line, for a quick answer without a file.</summary>
internal static class GivenReadings
{
    /// <exception cref="InputException">One is no reading.</exception>
    internal static ReadingSet Of(IReadOnlyList<string> given)
    {
        foreach (string one in given)
            if (!one.Contains('=', StringComparison.Ordinal) || one.AsSpan().IndexOfAny("\r\n\"#") >= 0)
                throw new InputException(
                    $"--reading {one}: write the feature's id and its value, such as box1.outside.x=8.02."
                );
        string rows = string.Join('\n', given.Select(g => string.Join(',', g.Split('=', 2))));
        return ReadingsFile.Parse($"feature,value\n{rows}\n", "--reading");
    }
}
