using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Maps;
using CalibGeom.Verification.Trends;

namespace CalibGeom.Verification.Tests.Trends;

/// <summary>A bridge is read off a scale: every coupon tells, and no comb's steps are taken for it.</summary>
public class BridgeTrendTests
{
    private static Trial Print(
        int week,
        double beam,
        int? open = null,
        string instrument = "cal",
        string digest = "a"
    ) =>
        Bridges.Read(
            new Trial(new ExposureSettings(2.5, 1), new TrialConditions(0.05, "Demo grey", "bench"))
            {
                Date = new DateOnly(2026, 1, 10).AddDays(7 * week),
                Instrument = instrument,
                Digest = digest,
                Slots = open is { } n ? new SlotOutcome(SlotOutcome.StandardHeights, n) : null,
            },
            beam
        );

    private static LogEntry[] Log(IEnumerable<Trial> prints) =>
        [.. prints.Select((t, i) => new LogEntry(i + 1, t, false))];

    private static GaugeValue?[] Told(bool counted, params Trial[] prints) =>
        [.. TrendLog.Of(Log(prints)).Current.Points.Select(p => p.Values.SingleOrDefault(v => v.Counted == counted))];

    [Fact]
    public void EachCouponTellsAsItWasRead()
    {
        GaugeValue?[] told = Told(false, Print(0, 2.30), Print(1, 2.30), Print(2, 2.25));
        Assert.Equal([0.30, 0.30, 0.25], told.Select(v => Math.Round(v!.Value, 6)));
        Assert.All(told, v => Assert.Equal(0.010, v!.Uncertainty, 1e-9));
        Assert.All(told, v => Assert.Equal(("bridge|cal|a|", "bridge|cal"), (v!.Series, v.Kin)));
    }

    /// <summary>What moved alone is named, not growth that stood still.</summary>
    [Fact]
    public void ABridgeThatMovesAloneIsNamed()
    {
        double[] growth = [0.020, 0.022, 0.019, 0.021, 0.020, 0.018, 0.021, 0.020];
        Trial[] prints =
        [
            .. growth.Select(
                (g, i) =>
                    Print(i, i < 7 ? 2.22 : 2.6) with
                    {
                        GrowthX = new GrowthReading(g, 0.0025, 0.0115),
                        GrowthY = new GrowthReading(g, 0.0025, 0.0115),
                    }
            ),
        ];
        TrendAnswer answer = TrendAnswer.Of(Log(prints));
        Assert.True(answer.Result.Change!.LightProbability < 0.5);
        string said = answer.Findings.First(f => f.Rule == "trend-verdict").Message;
        Assert.Contains("rint-through has moved by +0.3", said, StringComparison.Ordinal);
        Assert.DoesNotContain("rowth has moved", said, StringComparison.Ordinal);
    }

    [Fact]
    public void ACombBesideItGoesOnAsItDoesAlone()
    {
        Trial[] prints = [Print(0, 2.30, 5), Print(1, 2.30, 5), Print(2, 2.25, 6)];
        GaugeValue?[] comb = Told(true, prints);
        Assert.Equal([0.2825, 0.25], comb.OfType<GaugeValue>().Select(v => Math.Round(v.Value, 4)));
        Assert.Null(comb[1]);
        Assert.DoesNotContain(Told(false, prints), v => v is null);
        // A comb that is all open in every print bounds only; the bridges still tell.
        Trial[] open = [Print(0, 2.10, 8), Print(1, 2.10, 8)];
        Assert.All(Told(true, open), Assert.Null);
        Assert.DoesNotContain(Told(false, open), v => v is null);
    }

    [Fact]
    public void FallingPrintThroughIsSeenAndAnotherCaliperIsNot()
    {
        Trial[] Steps(string after) =>
            [
                .. Enumerable
                    .Range(0, 14)
                    .Select(i =>
                        Print(i, i < 7 ? 2.30 + 0.01 * (i % 2) : 2.24 + 0.01 * (i % 2), null, i < 7 ? "cal" : after)
                    ),
            ];
        TrendAnswer one = TrendAnswer.Of(Log(Steps("cal"))),
            two = TrendAnswer.Of(Log(Steps("other")));
        Assert.InRange(one.Result.Change!.PrintThrough!.Value.Value, -0.09, -0.03);
        Assert.Null(two.Result.Change);
        Assert.Equal("print 8", two.Findings.Single(f => f.Rule == "trend-caliper").Subject);
        Assert.DoesNotContain(one.Findings, f => f.Rule == "trend-caliper");
    }

    /// <summary>Objects differ by the form of two faces, and not by the step of a comb.</summary>
    [Fact]
    public void AnotherObjectIsComparedWithAnAllowance()
    {
        GaugeValue bridge = Told(false, Print(0, 2.3))[0]!,
            comb = Told(true, Print(0, 2.3, 5))[0]!;
        Assert.Equal(0.005, TrendOptions.BetweenSeries(bridge));
        Assert.Equal(0.020, TrendOptions.BetweenSeries(comb));
        Trial[] prints =
        [
            .. Enumerable.Range(0, 12).Select(i => Print(i, i < 6 ? 2.30 : 2.20, null, "cal", i < 6 ? "a" : "b")),
        ];
        Assert.True(TrendAnswer.Of(Log(prints)).Result.Change!.PrintThrough!.Value.High < 0);
    }

    [Fact]
    public void CouponsOfAMapTellByTheirBridgesAndWhatTheyShareCancels()
    {
        MapPoint[] Plate(double shared) =>
            [
                .. MapLog.Points(
                    new[] { 2.30, 2.25, 2.34, 2.29 }.Select(
                        (beam, i) =>
                            Print(0, beam + shared) with
                            {
                                Place = new PlateSpot($"A{i + 1}", i % 2 == 0 ? -50 : 50, i < 2 ? -30 : 30),
                            }
                    )
                ),
            ];
        Assert.Single(Plate(0).SelectMany(p => p.Values).Select(v => v.Series).Distinct());
        double?[] Light(double shared) => [.. LightMap.Run(Plate(shared)).Places.Select(p => p.Own?.Value)];
        double?[] light = Light(0);
        Assert.Equal(light.Order().First(), light[1]);
        foreach ((double? a, double? b) in light.Zip(Light(0.04)))
            Assert.Equal(a!.Value, b!.Value, 1e-9);
        Trial odd = Print(0, -2.3) with { Place = new PlateSpot("A1", 0, 0) };
        Assert.StartsWith("Coupon A1:", Assert.Throws<InputException>(() => MapLog.Points([odd])).Message);
    }

    [Fact]
    public void AWitnessWhoseBeamIsThinnerEndsTheState()
    {
        Trial[] calibration = [Print(0, 2.30), Print(1, 2.31), Print(2, 2.30)];
        Assert.Null(StateEnd.Of(calibration));
        Assert.Equal(3, StateEnd.Of([.. calibration, Print(5, 2.20)])!.Index);
    }
}
