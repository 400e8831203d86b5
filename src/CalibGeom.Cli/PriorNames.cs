using System.Globalization;
using CalibGeom.Verification.Exposures;

namespace CalibGeom.Cli;

/// <summary>Priors set by name on the command line; medians keep their spread.</summary>
internal static class PriorNames
{
    private static readonly Dictionary<string, Func<ExposurePriors, double, ExposurePriors>> Setters = new(StringComparer.Ordinal)
    {
        ["growth"] = (p, v) => p with { GrowthMean = v },
        ["growthDeviation"] = (p, v) => p with { GrowthDeviation = v },
        ["timeEffect"] = (p, v) => p with { TimeEffect = new LogNormalPrior(v, p.TimeEffect.LogDeviation) },
        ["restEffect"] = (p, v) => p with { RestEffect = new LogNormalPrior(v, p.RestEffect.LogDeviation) },
        ["restTime"] = (p, v) => p with { RestTime = new LogNormalPrior(v, p.RestTime.LogDeviation) },
        ["betweenPrints"] = (p, v) => p with { BetweenPrints = v },
        ["lackOfFit"] = (p, v) => p with { LackOfFit = v },
        ["penetrationDepth"] = (p, v) => p with { PenetrationDepth = new LogNormalPrior(v, p.PenetrationDepth.LogDeviation) },
        ["columnExponent"] = (p, v) => p with { ColumnExponent = v },
    };

    internal static IEnumerable<string> All => Setters.Keys;

    /// <exception cref="InputException">An assignment has no known name or no usable value.</exception>
    internal static ExposurePriors Apply(IEnumerable<string> assignments)
    {
        ExposurePriors priors = ExposurePriors.Default;
        foreach (string assignment in assignments)
        {
            string[] parts = assignment.Split('=', 2);
            if (parts.Length != 2 || !Setters.TryGetValue(parts[0], out Func<ExposurePriors, double, ExposurePriors>? set))
                throw new InputException($"--prior {assignment} sets no known prior. The names are {string.Join(", ", All)}; write NAME=VALUE.");
            if (!double.TryParse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture, out double value))
                throw new InputException($"--prior {assignment}: '{parts[1]}' is no number. Write it with a decimal point.");
            try
            {
                priors = set(priors, value);
            }
            catch (ArgumentException e)
            {
                throw new InputException($"--prior {assignment}: {e.Message.Split(" (Parameter")[0]}", e);
            }
        }
        return priors;
    }
}
