using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Cli.Tune;

/// <summary>
/// Rules of the recommendation set by name on the command line; their ranges are checked when tune runs.
/// </summary>
internal static class TuneRules
{
    private static readonly Dictionary<string, Func<TuneOptions, double, TuneOptions>> Setters = new(
        StringComparer.Ordinal
    )
    {
        ["probability"] = (o, v) => o with { Probability = v },
        ["visible"] = (o, v) => o with { Visible = v },
        ["leastLayers"] = (o, v) => o with { LeastLayers = v },
        ["columnGain"] = (o, v) => o with { ColumnGain = v },
        ["mostPrintThrough"] = (o, v) => o with { MostPrintThrough = v },
        ["mostSlower"] = (o, v) => o with { MostSlower = v },
        ["mostTime"] = (o, v) => o with { MostTime = v },
        ["restGain"] = (o, v) => o with { RestGain = v },
        ["mostRest"] = (o, v) => o with { MostRest = v },
        ["mostRestStep"] = (o, v) => o with { MostRestStep = v },
        ["leastStep"] = (o, v) => o with { LeastStep = v },
        ["mostUp"] = (o, v) => o with { MostUp = v },
        ["mostDown"] = (o, v) => o with { MostDown = v },
    };

    internal static IEnumerable<string> All => Setters.Keys;

    /// <exception cref="InputException">An assignment has no known name or no number.</exception>
    internal static TuneOptions Apply(TuneOptions options, IEnumerable<string> assignments)
    {
        foreach (string text in assignments)
            options = Assignment.Read(
                "--rule",
                "rule",
                text,
                All,
                (name, values) =>
                    values is [double value]
                        ? Setters[name](options, value)
                        : throw new ArgumentException("write one number.")
            );
        return options;
    }
}
