using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Trends;

namespace CalibGeom.Verification.Tests.Trends;

/// <summary>What trend says claims no more than the numbers beside it.</summary>
public class TrendWordsTests
{
    private static readonly TrialConditions Conditions = new(0.05, "Demo grey", "bench");

    private static Trial Print(double growth, int day, double time = 2.5, TrialConditions? conditions = null) =>
        new(new ExposureSettings(time, 1), conditions ?? Conditions)
        {
            Date = new DateOnly(2026, 1, 10).AddDays(day),
            Instrument = "cal",
            Digest = "0123456789abcdef",
            GrowthX = new GrowthReading(growth + 0.001, 0.002, 0.0115),
            GrowthY = new GrowthReading(growth - 0.001, 0.002, 0.0115),
        };

    private static TrendAnswer Of(IEnumerable<Trial> prints, double months = 6) =>
        TrendAnswer.Of(prints.Select((p, i) => new LogEntry(i + 1, p, false)), months: months);

    private static Trial[] Steady(int coupons, int days = 7) =>
        [.. Enumerable.Range(0, coupons).Select(i => Print(0.010 + 0.002 * (i % 3), days * i))];

    [Fact]
    public void NothingIsOutOfItsToleranceThatIsRatherChance()
    {
        var verdicts = new HashSet<TrendVerdict>();
        int doubtful = 0;
        for (int i = 0; i <= 20; i++)
        {
            double after = 0.006 - 0.001 * i;
            TrendAnswer answer = Of([.. Steady(6), .. Steady(2).Select(p => Print(after, p.Date!.Value.Day + 32))]);
            verdicts.Add(answer.Verdict);
            if (answer.Result.Change is not { } change)
                continue;
            bool chance = change.ChanceProbability >= 0.5;
            double beyond = (1 - change.ChanceProbability) * change.BeyondProbability;
            doubtful += chance ? 1 : 0;
            Assert.Equal(
                chance ? TrendVerdict.NotEnoughData
                    : beyond >= 0.5 ? TrendVerdict.Recalibrate
                    : TrendVerdict.Drifting,
                answer.Verdict
            );
            string said = answer.Findings[0].Message;
            Assert.Equal(beyond >= 0.95, said.Contains(", out of the tolerance", StringComparison.Ordinal));
            if (!chance)
                continue;
            Assert.Equal(1, answer.Result.MoreCoupons);
            Assert.Null(answer.Correction);
            Assert.DoesNotContain("tolerance", said, StringComparison.Ordinal);
            Assert.DoesNotContain(answer.Findings, f => f.Rule is "trend-size" or "trend-since");
        }
        Assert.True(doubtful > 0);
        Assert.Contains(TrendVerdict.Recalibrate, verdicts);
    }

    [Fact]
    public void WhatWouldHaveBeenSeenIsSaidOfALossHalfWay() =>
        Assert.Contains(
            "that came at once before print 7 would by now have been seen",
            Of(Steady(12)).Findings[0].Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void AnotherCaliperIsSaidWithItsPrintWhereOneAxisIsReadToo(bool both)
    {
        Trial[] prints = Steady(10);
        for (int i = 0; i < prints.Length; i++)
            prints[i] = prints[i] with
            {
                Instrument = i < 6 ? "old" : "new",
                GrowthY = both ? prints[i].GrowthY : null,
            };
        Finding said = Of(prints).Findings.Single(f => f.Rule == "trend-caliper");
        Assert.Equal("print 7", said.Subject);
        Assert.StartsWith("The caliper was changed at print 7:", said.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Of(Steady(10)).Findings, f => f.Rule == "trend-caliper");
    }

    [Fact]
    public void PartsMeasuredInAnotherStateAreKeptApartAndCallForNothing()
    {
        TrialConditions dry = new(0.05, "Demo grey", "bench", PartState.Dry),
            washed = new(0.05, "Demo grey", "bench", PartState.Washed);
        TrendAnswer answer = Of([
            .. Enumerable.Range(0, 4).Select(i => Print(0.01, 7 * i, 2.5, dry)),
            Print(0.01, 28, 2.5, washed),
        ]);
        Assert.Empty(answer.Triggers);
        Assert.NotEqual(TrendVerdict.Recalibrate, answer.Verdict);
        Assert.Contains(answer.Findings, f => f.Rule == "trend-apart");
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(1, true)]
    [InlineData(2, false)]
    public void TheAgeCountsFromTheNewestCalibration(int others, bool old)
    {
        Trial[] year = Steady(26, 14);
        Trial[] tried = [.. new[] { 2.2, 2.8 }.Take(others).Select((t, i) => Print(0.01, 352 + i, t))];
        TrendAnswer answer = Of([.. year, .. tried, Print(0.01, 356), Print(0.012, 364)]);
        Assert.Equal(old, answer.Triggers.Any(t => t.Rule == "trend-use"));
    }

    [Fact]
    public void ACouponThatStandsOutAloneIsNamed()
    {
        Trial[] prints = Steady(20);
        prints[12] = Print(0.120, 7 * 12);
        TrendAnswer answer = Of(prints);
        Assert.Null(answer.Result.Change);
        Assert.Equal("print 13", answer.Findings.Single(f => f.Rule == "trend-outlier").Subject);
        Assert.DoesNotContain(Of(Steady(20)).Findings, f => f.Rule == "trend-outlier");
    }

    [Fact]
    public void CouponsOfOnePlateAreNoSeries()
    {
        Trial[] plate = [.. Enumerable.Range(0, 5).Select(i => Print(0.01, 0) with { Place = Spot(i) })];
        Assert.Contains("one print", Assert.Throws<InputException>(() => Of(plate)).Message, StringComparison.Ordinal);
        Assert.Equal(6, Of([.. plate, Print(0.01, 7) with { Place = Spot(0) }]).Result.Points.Count);
        Assert.Equal(2, Of([.. Enumerable.Repeat(plate[0], 2)]).Result.Points.Count);
    }

    private static PlateSpot Spot(int i) => new($"A{i + 1}", 20 * i, 0, 0);
}
