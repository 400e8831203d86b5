using System.Text.Json.Nodes;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Decisions;

namespace CalibGeom.Cli.Predict;

/// <summary>Whether the model holds, what was left out and what conforms, as JSON.</summary>
internal static class PredictChecks
{
    internal static JsonObject Fit(ModelCheck c) =>
        new()
        {
            ["chiSquare"] = c.ChiSquare,
            ["degreesOfFreedom"] = c.DegreesOfFreedom,
            ["chance"] = c.Probability,
            ["birgeRatio"] = c.BirgeRatio,
            ["formError"] = c.FormError,
            ["raised"] = c.Raised,
            ["holds"] = c.Holds,
        };

    internal static JsonObject? Burr(BurrCheck? b, Func<Estimate?, JsonObject?> value) =>
        b is null
            ? null
            : new JsonObject
            {
                ["height"] = value(b.Height),
                ["told"] = b.Told,
                ["chance"] = b.Probability,
                ["seen"] = b.Seen,
                ["canTell"] = b.CanTell,
            };

    internal static JsonObject Gross(GrossError g) =>
        new()
        {
            ["feature"] = g.Feature.ToString(),
            ["instrument"] = g.Instrument,
            ["print"] = g.Print,
            ["distance"] = g.Distance,
            ["u"] = g.StandardUncertainty,
            ["chance"] = g.Probability,
            ["looksLike"] = g.LooksLike,
            ["remedy"] = g.Remedy,
        };

    internal static JsonObject Variation(PrintVariation v) =>
        new()
        {
            ["standardDeviation"] = v.StandardDeviation,
            ["degreesOfFreedom"] = double.IsFinite(v.DegreesOfFreedom) ? v.DegreesOfFreedom : null,
            ["prints"] = v.Prints,
            ["set"] = v.IsSet,
        };

    internal static JsonObject? Decision(ConformityDecision? d) =>
        d is null
            ? null
            : new JsonObject
            {
                ["verdict"] = d.Verdict switch
                {
                    Verdict.Conforms => "conforms",
                    Verdict.DoesNotConform => "does not conform",
                    _ => "cannot be told",
                },
                ["low"] = Finite(d.Limits.Low),
                ["high"] = Finite(d.Limits.High),
                ["guardBand"] = d.GuardBand,
                ["conformance"] = d.ConformanceProbability,
                ["riskOfAccepting"] = d.RiskOfAccepting,
                ["riskOfRejecting"] = d.RiskOfRejecting,
            };

    internal static JsonObject? Capability(Capability? c) =>
        c is null
            ? null
            : new JsonObject
            {
                ["prints"] = c.Count,
                ["mean"] = c.Mean,
                ["standardDeviation"] = c.StandardDeviation,
                ["cp"] = c.Cp,
                ["cpLow"] = c.CpInterval.Low,
                ["cpHigh"] = c.CpInterval.High,
                ["cpk"] = c.Cpk,
                ["cpkLow"] = c.CpkInterval.Low,
                ["cpkHigh"] = c.CpkInterval.High,
            };

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;
}
