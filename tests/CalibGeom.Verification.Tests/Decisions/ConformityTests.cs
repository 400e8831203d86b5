using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Decisions;
using CalibGeom.Verification.Tests.Uncertainty;
using CalibGeom.Verification.Uncertainty;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.Decisions;

public class ConformityTests
{
    [Fact]
    public void AZenerDiodeConformsWithProbability92PerCent()
    {
        // JCGM 106:2012, 7.3, from memory: breakdown voltage at most -5.40 V, measured -5.47 V, u 0.05 V; "p_c = 0.92".
        ConformityDecision d = ConformityDecision.Of(new ToleranceLimits(double.NegativeInfinity, -5.40), -5.47, 0.05);
        Near.Absolute(0.92, d.ConformanceProbability, 0.005);
        // Computed: Phi(1.4) = 0.919243340766229.
        Near.Absolute(0.919243340766229, d.ConformanceProbability, 1e-12);
        Near.Absolute(1 - 0.919243340766229, d.RiskOfAccepting, 1e-12);
        Assert.Equal(Verdict.CannotBeTold, d.Verdict);
    }

    [Fact]
    public void TheGuardBandLeavesFivePerCentOnEachSide()
    {
        // ISO 14253-1:2017, from memory: guard factor 1.65 for a conformance probability of 95 %, computed 1.644853627.
        var limits = new ToleranceLimits(10, 11);
        ConformityDecision d = ConformityDecision.Of(limits, 10.5, 0.1);
        Near.Absolute(0.1644853627, d.GuardBand, 1e-9);
        Verdict At(double v) => ConformityDecision.Of(limits, v, 0.1).Verdict;
        Assert.Equal(Verdict.Conforms, At(10.165));
        Assert.Equal(Verdict.CannotBeTold, At(10.164));
        Assert.Equal(Verdict.CannotBeTold, At(9.836));
        Assert.Equal(Verdict.DoesNotConform, At(9.835));
        Assert.Equal(Verdict.Conforms, At(10.835));
        Assert.Equal(Verdict.CannotBeTold, At(11.164));
        Assert.Equal(Verdict.DoesNotConform, At(11.165));
        // At the edge of acceptance the risk of being outside is 5 %.
        Near.Absolute(0.05, ConformityDecision.Of(limits, 10 + d.GuardBand, 0.1).RiskOfAccepting, 1e-6);
        // Limits closer than two guard bands accept nothing.
        Assert.Equal(Verdict.CannotBeTold, ConformityDecision.Of(new ToleranceLimits(10.4, 10.6), 10.5, 0.1).Verdict);
    }

    [Property(MaxTest = 100)]
    public void VerdictsAreRightWithProbability95(short v, byte u, byte nu)
    {
        var limits = new ToleranceLimits(-1, 1);
        ConformityDecision d = ConformityDecision.Of(limits, v / 5000.0, 0.01 + u / 500.0, 2 + nu);
        if (d.Verdict == Verdict.Conforms)
            Assert.True(d.RiskOfAccepting <= 0.1 + 1e-9);
        if (d.Verdict == Verdict.DoesNotConform)
            Assert.True(d.RiskOfRejecting <= 0.05 + 1e-9);
        Near.Absolute(1, d.RiskOfAccepting + d.RiskOfRejecting, 1e-12);
    }

    [Fact]
    public void RisksOfAProcessAgreeWithDrawnItems()
    {
        // Resistors as in JCGM 106, 9.5 (inputs from memory): 1500 +- 0.2 ohm, process 0.12, measurement 0.04.
        var tolerance = new ToleranceLimits(1499.8, 1500.2);
        ProcessRisk simple = ProcessRisk.Of(tolerance, tolerance, 1500, 0.12, 0.04);
        ProcessRisk guarded = ProcessRisk.Of(tolerance, new ToleranceLimits(1499.82, 1500.18), 1500, 0.12, 0.04);
        var random = new SeededRandom(106);
        const int Items = 400_000;
        int consumer = 0,
            producer = 0;
        for (int i = 0; i < Items; i++)
        {
            double truth = 0.12 * random.Normal(),
                seen = truth + 0.04 * random.Normal();
            consumer += Math.Abs(truth) > 0.2 && Math.Abs(seen) <= 0.2 ? 1 : 0;
            producer += Math.Abs(truth) <= 0.2 && Math.Abs(seen) > 0.2 ? 1 : 0;
        }
        Near.Absolute((double)consumer / Items, simple.Consumer, 1e-3);
        Near.Absolute((double)producer / Items, simple.Producer, 1e-3);
        Assert.True(guarded.Consumer < simple.Consumer);
        Assert.True(guarded.Producer > simple.Producer);
    }

    [Fact]
    public void LimitsAreChecked()
    {
        Assert.Throws<ArgumentException>(() => new ToleranceLimits(1, 1));
        Assert.Throws<ArgumentException>(() => new ToleranceLimits(double.NaN, 1));
        Assert.Throws<ArgumentException>(() => new ToleranceLimits(double.NegativeInfinity, double.PositiveInfinity));
        Assert.Throws<ArgumentException>(() => ConformityDecision.Of(new ToleranceLimits(0, 1), 0.5, 0));
    }

    [Fact]
    public void CapabilityHasItsInterval()
    {
        // By hand: mean 10, s = sqrt(10 / 4) = 1.58114; Cp = 12 / (6 s), Cpk = (15 - 10) / (3 s).
        Capability c = Capability.Of([8, 9, 10, 11, 12], new ToleranceLimits(3, 15));
        double s = Math.Sqrt(2.5);
        Near.Relative(12 / (6 * s), c.Cp, 1e-12);
        Near.Relative(5 / (3 * s), c.Cpk, 1e-12);
        // Chi-squared with 4 degrees of freedom at 0.025 and 0.975: 0.484419 and 11.143287 (tables).
        Near.Relative(c.Cp * Math.Sqrt(0.484419 / 4), c.CpInterval.Low, 1e-5);
        Near.Relative(c.Cp * Math.Sqrt(11.143287 / 4), c.CpInterval.High, 1e-5);
        double half = 1.959964 * Math.Sqrt(1 / 45.0 + c.Cpk * c.Cpk / 8);
        Near.Absolute(c.Cpk - half, c.CpkInterval.Low, 1e-5);
        Assert.Throws<ArgumentException>(() => Capability.Of([8, 9, 10, 11], new ToleranceLimits(3, 15)));
        Assert.Throws<ArgumentException>(() => Capability.Of([8, 8, 8, 8, 8], new ToleranceLimits(3, 15)));
    }

    /// <summary>Three verdicts, and risks that are never rounded to nothing or to all.</summary>
    [Theory]
    [InlineData(0.05, 0.004, "conforms", "risk if accepted <1 %, if rejected >99 %")]
    [InlineData(0.05, 0.015, "cannot be told", "risk if accepted 18 %, if rejected 82 %")]
    [InlineData(0.12, 0.016, "does not conform", "risk if accepted >99 %, if rejected <1 %")]
    [InlineData(0.05, 0.000001, "conforms", "risk if accepted 0 %, if rejected 100 %")]
    public void TheSentenceOfADecisionHasVerdictAndRisks(double value, double u, string verdict, string risks)
    {
        // Both tails beyond 0.02 mm: 0.18 of a normal law with 0.015 mm (tables of the normal distribution, z 1.33).
        string said = PredictionText.Sentence(ConformityDecision.Of(new ToleranceLimits(0.03, 0.07), value, u));
        Assert.StartsWith(
            FormattableString.Invariant(
                $"{verdict}: {value:0.000} mm against 0.030 to 0.070 with a guard band of {1.645 * u:0.000} (ISO 14253-1); "
            ),
            said,
            StringComparison.Ordinal
        );
        Assert.Contains(risks, said, StringComparison.Ordinal);
    }
}
