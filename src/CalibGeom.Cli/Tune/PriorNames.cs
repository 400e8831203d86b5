using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Cli.Tune;

/// <summary>
/// Priors set by name on the command line. A median alone keeps its spread; MEDIAN/LOW/HIGH sets the central 95 % too.
/// </summary>
internal static class PriorNames
{
    private static readonly Dictionary<string, Func<ExposurePriors, double, ExposurePriors>> Numbers = new(
        StringComparer.Ordinal
    )
    {
        ["growth"] = (p, v) => p with { GrowthMean = v },
        ["growthDeviation"] = (p, v) => p with { GrowthDeviation = v },
        ["lackOfFit"] = (p, v) => p with { LackOfFit = v },
        ["axisDifference"] = (p, v) => p with { AxisDifference = v },
        ["columnExponent"] = (p, v) => p with { ColumnExponent = v },
        ["columnExponentDeviation"] = (p, v) => p with { ColumnExponentDeviation = v },
        ["lightDrift"] = (p, v) => p with { LightDrift = v },
    };

    private static readonly Dictionary<
        string,
        (Func<ExposurePriors, LogNormalPrior> Get, Func<ExposurePriors, LogNormalPrior, ExposurePriors> Set)
    > Spreads = new(StringComparer.Ordinal)
    {
        ["timeEffect"] = (p => p.TimeEffect, (p, v) => p with { TimeEffect = v }),
        ["restEffect"] = (p => p.RestEffect, (p, v) => p with { RestEffect = v }),
        ["restTime"] = (p => p.RestTime, (p, v) => p with { RestTime = v }),
        ["betweenPrints"] = (p => p.BetweenPrints, (p, v) => p with { BetweenPrints = v }),
        ["penetrationDepth"] = (p => p.PenetrationDepth, (p, v) => p with { PenetrationDepth = v }),
    };

    internal static IEnumerable<string> All => Numbers.Keys.Concat(Spreads.Keys);

    /// <exception cref="InputException">An assignment has no known name or no usable value.</exception>
    internal static ExposurePriors Apply(IEnumerable<string> assignments)
    {
        ExposurePriors priors = ExposurePriors.Default;
        foreach (string text in assignments)
            priors = Assignment.Read("--prior", "prior", text, All, (name, values) => Set(priors, name, values));
        return priors;
    }

    private static ExposurePriors Set(ExposurePriors priors, string name, double[] values)
    {
        if (Numbers.TryGetValue(name, out var number) && values.Length == 1)
            return number(priors, values[0]);
        if (!Spreads.TryGetValue(name, out var spread) || values.Length is not (1 or 3))
            throw new ArgumentException(
                Spreads.ContainsKey(name) ? "write a median, or MEDIAN/LOW/HIGH." : "write one number."
            );
        if (values.Length == 1)
            return spread.Set(priors, new LogNormalPrior(values[0], spread.Get(priors).LogDeviation));
        return values[1] > 0 && values[1] < values[0] && values[0] < values[2]
            ? spread.Set(priors, LogNormalPrior.Of95(values[0], values[1], values[2]))
            : throw new ArgumentException("LOW, median and HIGH must rise from above 0; write MEDIAN/LOW/HIGH.");
    }
}
