using CalibGeom.Light;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Verification.Tests.Tuning;

/// <summary>Bridges teach how deep light passes, as combs do.</summary>
public class BridgeTuningTests
{
    private static readonly double[] Times = [1.5, 2, 2.7, 3.6, 4.8, 6.4];
    private static readonly WorkingCurve Curve = new(0.14, 8);

    private static double Through(double time) => new LayerLight(Curve, 4, time, 0.05).PrintThrough();

    private static Trial Print(double time, double off = 0, string instrument = "cal") =>
        Bridges.Read(
            new Trial(new ExposureSettings(time), Make.Conditions()) { Instrument = instrument },
            Bridges.Beam + Through(time) + off
        );

    [Fact]
    public void BridgesGiveDpAndTheDoseBetterThanCombs()
    {
        PrintThroughResponse bridges = PrintThroughResponse.Of([.. Times.Select(t => Print(t))])!,
            combs =
                PrintThroughResponse.Of([
                    .. Times.Select(t => new Trial(new ExposureSettings(t), Make.Conditions())
                    {
                        Slots = Make.Slots(SlotOutcome.StandardHeights.Count(h => h > Through(t))),
                    }),
                ])!;
        Assert.True(bridges.Known);
        Assert.Equal(0.14, bridges.PenetrationDepth, 0.012);
        Assert.Equal(Through(3), bridges.At(3).Mean, 0.01);
        Assert.True(bridges.PenetrationDepthNow.LogDeviation < combs.PenetrationDepthNow.LogDeviation);
    }

    /// <summary>
    /// What a caliper adds to all it reads is its own unknown: it says nothing of Dp, and how deep light passes is not
    /// known better than that.
    /// </summary>
    [Fact]
    public void WhatTheCaliperAddsBlursTheDepthAndNotDp()
    {
        PrintThroughResponse Of(double off) => PrintThroughResponse.Of([.. Times.Select(t => Print(t, off))])!;
        Assert.Equal(Of(0).PenetrationDepth, Of(0.02).PenetrationDepth, 0.004);
        Assert.InRange(Of(0).At(3).Uncertainty, 0.0105, 0.02);
        // By two calipers it is known better.
        PrintThroughResponse two = PrintThroughResponse.Of([
            .. Times.Select((t, i) => Print(t, 0, i % 2 == 0 ? "a" : "b")),
        ])!;
        Assert.True(two.At(3).Uncertainty < Of(0).At(3).Uncertainty);
    }

    [Fact]
    public void ALogLearnsDpFromPrintsWithABridge()
    {
        LearntEffects Of(params double[] times) =>
            LearntEffects.Of(TrendLog.Of([.. times.Select((t, i) => new LogEntry(i + 1, Print(t), false))]));
        LearntEffects learnt = Of(1.6, 2, 2.5, 3.1);
        Assert.Equal((0, 4), (learnt.GrowthPrints, learnt.PrintThroughPrints));
        Assert.InRange(0.14, learnt.PrintThrough.Low, learnt.PrintThrough.High);
        Assert.True(learnt.PrintThrough.LogDeviation < LearntEffects.None.PrintThrough.LogDeviation);
        Assert.Equal(0, Of(2, 2, 2).PrintThroughPrints);
    }

    [Fact]
    public void WordsSpeakOfTheBridgeWhereNoCombWasCounted()
    {
        Finding bridge = Tuner.Run([Print(2), Print(3)]).Findings.Single(f => f.Rule == "print-through"),
            comb = Tuner
                .Run([Print(2), Print(3) with { Slots = Make.Slots(4) }])
                .Findings.Single(f => f.Rule == "print-through");
        Assert.Equal("bridge.thickness", bridge.Subject);
        Assert.DoesNotContain("tunnel", bridge.Message, StringComparison.Ordinal);
        Assert.Equal("slots.open", comb.Subject);
        Assert.Contains("tunnels", comb.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2, -0.12, "cal", true)]
    [InlineData(2, 0.12, "cal", true)]
    [InlineData(2, -0.05, "cal", false)]
    [InlineData(2, -0.085, "cal", true)]
    [InlineData(2, -0.085, "other", false)]
    [InlineData(3, 0.1, "cal", false)]
    public void LightThatChangedIsSeen(double time, double off, string instrument, bool said)
    {
        Trial moved = Bridges.Read(
            new Trial(new ExposureSettings(time), Make.Conditions()) { Instrument = instrument },
            Bridges.Beam + Through(2) + off
        );
        Finding[] found = [.. Tuner.Run([Print(2), moved]).Findings.Where(f => f.Rule == "light-changed")];
        // Where the state has ended the prints before it still say so.
        Assert.Equal(said, found.Length > 0);
        Assert.All(found, f => Assert.Equal("bridge.thickness", f.Subject));
    }

    /// <summary>At a setting that was never repeated only what was learnt at others says what to expect.</summary>
    [Fact]
    public void AWitnessWithHalfTheLightIsNotPooled()
    {
        Trial[] calibration = [Print(1.6), Print(2, 0.005), Print(2.5), Print(2.5, 0.01)];
        Assert.Null(Tuner.Run(calibration).Moved);
        TuningResult after = Tuner.Run([.. calibration, Print(2.5, 0.14 * Math.Log(0.49))]);
        Assert.NotNull(after.Moved);
    }
}
