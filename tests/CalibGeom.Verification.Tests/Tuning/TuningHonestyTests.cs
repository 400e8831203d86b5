using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tests.Uncertainty;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Tuning.Policy;
using CalibGeom.Verification.Tuning.Words;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Tuning;

/// <summary>
/// What tune must not claim: nothing of what nobody measured, no d50 from one-sided counts, no change from one comb.
/// </summary>
public class TuningHonestyTests
{
    [Fact]
    public void WithoutBoxesNothingIsSaidOfTheirFit()
    {
        Trial trial = new(new ExposureSettings(2), Make.Conditions())
        {
            Columns = Make.Columns(0.4),
            Slots = Make.Slots(7),
        };
        IReadOnlyList<Finding> findings = Tuner.Run([trial]).Findings;
        Assert.Contains(findings, f => f.Rule == "fit-not-known");
        Assert.DoesNotContain(findings, f => f.Rule is "tight" or "loose" or "on-target");
    }

    [Theory]
    [InlineData(0.05, "Grown", "edges have grown by 0.0")]
    [InlineData(-0.05, "Shrunk", "edges have grown by -0.0")]
    public void AnObjectWithoutBoxesHasGrowthButNoTightJoint(double growth, string word, string said)
    {
        Trial spans = Make.Trial(2, 0, growth) with { Joints = [] };
        string[] told = [.. Tuner.Run([spans, spans]).Findings.Select(f => $"{f.Subject} {f.Message}")];
        Assert.Contains(
            told,
            t => t.Contains(word, StringComparison.Ordinal) && t.Contains(said, StringComparison.Ordinal)
        );
        Assert.DoesNotContain(told, t => t.Contains("joint", StringComparison.OrdinalIgnoreCase));
        Assert.DoesNotContain(told, t => t.Contains("tight", StringComparison.OrdinalIgnoreCase));
    }

    [Theory]
    [InlineData(0.1, "Every column stood, down to 0.25 mm")]
    [InlineData(1, "Every column was lost, up to 0.8")]
    public void AllOrNoneOfTheColumnsGiveABoundOnly(double limit, string message)
    {
        Finding told = Tuner
            .Run([Make.Trial(2, 0, 0) with { Columns = Make.Columns(limit) }])
            .Findings.Single(f => f.Rule == "column-limit");
        Assert.StartsWith(message, told.Message, StringComparison.Ordinal);
        Assert.Null(told.Value);
    }

    [Fact]
    public void OneCombAloneIsNoChangeOfLight() =>
        Assert.DoesNotContain(
            Tuner.Run([Make.Trial(2, 0, 0.02) with { Slots = Make.Slots(0) }]).Findings,
            f => f.Rule == "light-changed"
        );

    [Fact]
    public void APrintWithoutSlotsIsNotBlamedForThoseOfAnother()
    {
        Trial bright = Make.Trial(2, 0, 0.02) with { Slots = Make.Slots(3) },
            dim = Make.Trial(4, 0, 0.02) with { Slots = Make.Slots(8) };
        Assert.Contains(Tuner.Run([bright, dim]).Findings, f => f.Rule == "light-changed");
        Assert.DoesNotContain(
            Tuner.Run([bright, dim, Make.Trial(4, 0, 0.02)]).Findings,
            f => f.Rule == "light-changed"
        );
    }

    [Fact]
    public void TheLongestExposureIsNotExceeded() =>
        Assert.Equal(600, Tuner.Run([Make.Trial(600, 6, -0.05)]).Next.Settings.Time);

    [Fact]
    public void TrialsWithoutATemperatureAreSaidToBePooled()
    {
        Trial warm = new(new ExposureSettings(2), new TrialConditions(0.05, "Demo grey", "bench", temperatureStart: 24))
        {
            GrowthX = new GrowthReading(0, 0.002),
        };
        Finding told = Tuner.Run([Make.Trial(2, 0, 0), warm]).Findings.Single(f => f.Rule == "temperature-unknown");
        Assert.StartsWith(
            "The vat temperature of 1 of 2 trials was not written down",
            told.Message,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(Tuner.Run([warm, warm]).Findings, f => f.Rule == "temperature-unknown");
    }

    [Fact]
    public void TenPerfectPrintsStopAtTheSecond()
    {
        Trial perfect = Make.Trial(2.5, 2, 0) with { Columns = Make.Columns(0), Slots = Make.Slots(8) };
        Assert.Equal(NextKind.Confirm, Tuner.Run([perfect]).Next.Kind);
        for (int prints = 2; prints <= 10; prints++)
        {
            TuningResult result = Tuner.Run([.. Enumerable.Repeat(perfect, prints)]);
            Assert.Equal(NextKind.Stop, result.Next.Kind);
            Assert.Equal(Verdict.OnTarget, result.Verdict);
            Assert.Equal(2.5, result.Next.Settings.Time);
            Assert.DoesNotContain(result.Findings, f => f.Severity == Severity.Warning);
        }
    }

    [Theory]
    [InlineData(0.002, true)]
    [InlineData(0.0125, false)]
    public void PrintsThatDifferAreJudgedByWhatIsBelievedOfPrints(double widest, bool told)
    {
        TuneOptions options = TuneOptions.Default with
        {
            Priors = ExposurePriors.Default with
            {
                BetweenPrints = LogNormalPrior.Of95(widest / 2, widest / 4, widest),
            },
        };
        // Beside the newest state, which takes prints apart that differ beyond chance.
        Trial first = Make.Trial(2, 1, 0);
        Finding[] differ =
        [
            .. MachineWords
                .Of(Tuner.Run([first], options) with { Trials = [first, Make.Trial(2, 1, 0.03)] })
                .Where(f => f.Rule == "repeat-differs"),
        ];
        Assert.Equal(told, differ.Length == 1);
        Assert.All(
            differ,
            f =>
                Assert.Contains(
                    $"{FormattableString.Invariant($"{widest:0.0000}")} mm",
                    f.Message,
                    StringComparison.Ordinal
                )
        );
    }

    [Fact]
    public void NothingOnThePlateDoublesTheLightAndAsksNoOffset()
    {
        Trial nothing = new(new ExposureSettings(2, 1), Make.Conditions()) { Columns = Make.Columns(9) };
        TuningResult result = Tuner.Run([nothing]);
        Assert.Equal(
            (4, 1, 0),
            (result.Next.Settings.Time, result.Next.Settings.Rest, result.Next.Settings.EdgeOffset)
        );
        Assert.Equal(Reason.NothingPrinted, result.Next.Reason);
        foreach (string word in new[] { "base exposure", "level", "plate" })
            Assert.Contains(word, result.Findings[0].Remedy, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData(21, true)]
    [InlineData(25, false)]
    [InlineData(31, true)]
    public void AVatTooCoolOrTooWarmIsSaid(double vat, bool said)
    {
        var conditions = new TrialConditions(0.05, "Demo grey", "bench", temperatureStart: vat);
        Trial trial = new(new ExposureSettings(2), conditions) { GrowthX = new GrowthReading(0, 0.002) };
        Assert.Equal(said, Tuner.Run([trial]).Findings.Any(f => f.Rule == "vat-temperature"));
    }

    [Fact]
    public void WhatIsSaidOfTheClearanceIsOf95PerCentAsInTheTable()
    {
        TuningResult result = Tuner.Run([Make.Trial(2.5, 1, 0.01), Make.Trial(2.5, 1, 0.012)]);
        string said = result
            .Findings.Single(f => f.Rule is "on-target" or "tight" or "loose" or "not-told-yet")
            .Message;
        double half = double.Parse(
            said.Split(" +- ")[1].Split(' ')[0],
            System.Globalization.CultureInfo.InvariantCulture
        );
        GrowthPrediction growth = result.Response.At(result.Trials[^1].Settings, withCaliper: false);
        // Phi^-1(0.975), and a clearance is twice a growth.
        Near.Absolute(2 * 1.959963985 * growth.Uncertainty, half, 0.0006);
        Assert.Contains(" mm (95 %) at the last settings", said, StringComparison.Ordinal);
    }
}
