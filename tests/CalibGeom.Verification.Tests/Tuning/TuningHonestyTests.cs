using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning;

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
        IReadOnlyList<Finding> findings = Tuner.Advise([trial]).Findings;
        Assert.Contains(findings, f => f.Rule == "fit-not-known");
        Assert.DoesNotContain(findings, f => f.Rule is "tight" or "loose" or "on-target");
    }

    [Theory]
    [InlineData(0.1, "Every column stood: at the recommended settings more than half should print from ")]
    [InlineData(1, "Every column was lost: at the recommended settings fewer than half should print up to ")]
    public void AllOrNoneOfTheColumnsGiveABoundOnly(double limit, string message)
    {
        Finding told = Tuner
            .Advise([Make.Trial(2, 0, 0) with { Columns = Make.Columns(limit) }])
            .Findings.Single(f => f.Rule == "column-limit");
        Assert.StartsWith(message, told.Message, StringComparison.Ordinal);
        Assert.Null(told.Value);
    }

    [Theory]
    [InlineData(8, "the slots are open")]
    [InlineData(5, "the slots from 0.315 mm on are open")]
    public void OnlySlotsThatAreOpenAreCalledOpen(int open, string words) =>
        Assert.Contains(
            Tuner.Advise([Make.Trial(2, 0, 0) with { Slots = Make.Slots(open) }]).Findings,
            f => f.Message.Contains(words, StringComparison.Ordinal)
        );

    [Fact]
    public void OneCombAloneIsNoChangeOfLight() =>
        Assert.DoesNotContain(
            Tuner.Advise([Make.Trial(2, 0, 0.02) with { Slots = Make.Slots(0) }]).Findings,
            f => f.Rule == "light-changed"
        );

    [Fact]
    public void APrintWithoutSlotsIsNotBlamedForThoseOfAnother()
    {
        Trial bright = Make.Trial(2, 0, 0.02) with { Slots = Make.Slots(3) },
            dim = Make.Trial(4, 0, 0.02) with { Slots = Make.Slots(8) };
        Assert.Contains(Tuner.Advise([bright, dim]).Findings, f => f.Rule == "light-changed");
        Assert.DoesNotContain(
            Tuner.Advise([bright, dim, Make.Trial(4, 0, 0.02)]).Findings,
            f => f.Rule == "light-changed"
        );
    }

    [Fact]
    public void TheLongestExposureIsNotExceeded() =>
        Assert.Equal(600, Tuner.Advise([Make.Trial(600, 6, -0.05)]).Next.Settings.Time);

    [Fact]
    public void TrialsWithoutATemperatureAreSaidToBePooled()
    {
        Trial warm = new(new ExposureSettings(2), new TrialConditions(0.05, "Demo grey", "bench", temperatureStart: 24))
        {
            GrowthX = new GrowthReading(0, 0.002),
        };
        Finding told = Tuner.Advise([Make.Trial(2, 0, 0), warm]).Findings.Single(f => f.Rule == "temperature-unknown");
        Assert.StartsWith(
            "The vat temperature of 1 of 2 trials was not written down",
            told.Message,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(Tuner.Advise([warm, warm]).Findings, f => f.Rule == "temperature-unknown");
    }

    [Fact]
    public void SmallStepsOfExposureAreNotRoundedAway()
    {
        string told = Tuner.Advise([Make.Trial(0.1, 0, -0.005)]).Findings.Single(f => f.Rule == "loose").Message;
        Assert.Contains("about 0.0", told, StringComparison.Ordinal);
        Assert.DoesNotContain("about 0.0 s", told, StringComparison.Ordinal);
    }

    [Fact]
    public void WordsOfFitAreNoEvidenceAgainstOneResponse()
    {
        // At 0.02 mm either word has probability one half and would add 1.39 to the sum of squares.
        Trial[] plain = [.. Enumerable.Range(0, 4).Select(_ => Make.Trial(2, 0, 0.015))];
        Trial[] felt =
        [
            .. plain.Select(
                (t, i) =>
                    t with
                    {
                        Joints = [new JointOutcome("joint1", 0.05, i % 2 == 0 ? FeltFit.Binds : FeltFit.Slides)],
                    }
            ),
        ];
        Assert.Equal(
            ExposureResponse.Learn(plain).FitProbability!.Value,
            ExposureResponse.Learn(felt).FitProbability!.Value,
            1e-9
        );
    }
}
