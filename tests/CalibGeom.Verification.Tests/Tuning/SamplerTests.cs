using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Tuning;

/// <summary>
/// What is believed after the prints agrees with a long chain that shares no code with the sampler: also where the log
/// is far more precise than what was believed before, and where it contradicts that.
/// </summary>
public class SamplerTests
{
    private static readonly ExposureSettings Elsewhere = new(2.8, 3);

    [Theory]
    [InlineData("ordinary")]
    [InlineData("precise")]
    [InlineData("far from what was believed")]
    [InlineData("steep")]
    public void ALongChainSaysTheSame(string log)
    {
        ExposurePriors priors =
            log == "precise"
                ? ExposurePriors.Default with
                {
                    BetweenPrints = new LogNormalPrior(1e-4, 0.1),
                    LackOfFit = 1e-4,
                }
                : ExposurePriors.Default;
        Trial[] trials = Log(log);
        var chain = new LongChain(trials, priors, Elsewhere);
        ExposureResponse drawn = ExposureResponse.Of(trials, priors);
        GrowthPrediction growth = drawn.At(Elsewhere, withCaliper: false);
        Assert.InRange((growth.Mean - chain.Mean) / chain.Deviation, -0.3, 0.3);
        Assert.InRange(growth.Uncertainty / chain.Deviation, 0.8, 1.25);
        Assert.InRange(drawn.TimeEffect / chain.TimeEffect, 0.85, 1.18);
    }

    private static Trial[] Log(string name) =>
        name switch
        {
            "ordinary" =>
            [
                Make.Trial(2, 0.5, 0.035),
                Make.Trial(2.5, 2, 0.030),
                Make.Trial(2.5, 2, 0.038),
                Make.Trial(3.1, 2, 0.031),
            ],
            "precise" =>
            [
                .. from t in new[] { 1.4, 2, 4 }
                from r in new[] { 0, 1.0, 3 }
                select Make.Trial(t, r, 0.011 + 0.025 * Math.Log(t / 2) - 0.012 * (1 - Math.Exp(-r / 1.5)), 1e-4),
            ],
            "steep" =>
            [
                Make.Trial(2, 0, 0, 1e-3),
                Make.Trial(4, 0, 0.15, 1e-3),
                Make.Trial(4, 6, 0.02, 1e-3),
                Make.Trial(4, 6, 0.022, 1e-3),
            ],
            _ => [Make.Trial(2, 0, 0.12, 1e-4), Make.Trial(4, 6, -0.08, 1e-4)],
        };
}
