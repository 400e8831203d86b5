using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Trends;

namespace CalibGeom.Verification.Tests.Logs;

/// <summary>Print-through as the beam of a bridge shows it.</summary>
public class BridgeReadingTests
{
    private static Trial Read(params double[] beam) => Bridges.Read(new Trial(new(2.5), new(0.05)), beam);

    [Theory]
    [InlineData(new[] { 2.25 }, 0.25, 0.0100)]
    [InlineData(new[] { 2.24, 2.26 }, 0.25, 0.00825)]
    [InlineData(new[] { 1.98 }, -0.02, 0.0100)]
    public void IsTheMeanLessTheDesignWithScatterAndForm(double[] beam, double value, double uncertainty)
    {
        BridgeReading read = BridgeReading.Of(Read(beam))!;
        Assert.Equal(value, read.Value, 1e-9);
        Assert.Equal(uncertainty, read.Uncertainty, 1e-5);
    }

    [Fact]
    public void WhatWasNotReadAndSlipsAreNone()
    {
        Assert.Null(BridgeReading.Of(new Trial(new(2.5), new(0.05))));
        Assert.Null(BridgeReading.Of(Read(22.5)));
        // As much as light may add is no slip; beside one it is kept.
        Assert.Equal(0.8, BridgeReading.Of(Read(2.8, 22.5))!.Value, 1e-9);
    }

    /// <summary>Light makes no beam thinner, and where a comb of the same print says otherwise it counts.</summary>
    [Theory]
    [InlineData(1.95, null, true)]
    [InlineData(1.93, null, false)]
    [InlineData(2.28, 5, true)]
    [InlineData(2.45, 5, false)]
    [InlineData(2.10, 5, false)]
    public void WhatLightCannotBeIsNone(double beam, int? open, bool counts)
    {
        Trial trial = Read(beam) with
        {
            Slots = open is { } n ? new SlotOutcome(SlotOutcome.StandardHeights, n) : null,
        };
        Assert.Equal(counts, BridgeReading.Of(trial) is not null);
    }

    /// <summary>A log may have been written by hand.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(-2.2)]
    [InlineData(1001)]
    [InlineData(double.NaN)]
    public void AThicknessThatIsNoneIsRefusedWhereverTheLogIsRead(double mm)
    {
        Trial odd = Read(2.2, mm) with { Date = new DateOnly(2026, 3, 2) };
        InputException refused = Assert.Throws<InputException>(() => BridgeReading.Of(odd));
        Assert.StartsWith("The print of 2026-03-02: a reading of bridge.thickness is", refused.Message);
        Assert.Throws<InputException>(() => TrendAnswer.Of([new LogEntry(1, odd, false)]));
        Trial undesigned = Read(2.2) with { Nominals = new Dictionary<string, double>() };
        Assert.Contains("nominal", Assert.Throws<InputException>(() => BridgeReading.Of(undesigned)).Message);
    }

    [Fact]
    public void ABridgeAloneSpeaksOfExposure()
    {
        Trial trial = TrialReadings.ToTrial(
            Bridges.Table,
            new ReadingSet([Reading.Size("bridge.thickness", 2.31, "cal")]),
            new ExposureSettings(2.5),
            new TrialConditions(0.05)
        );
        Assert.Equal(0.31, BridgeReading.Of(trial)!.Value, 1e-9);
        Assert.Equal("cal", BridgeReading.Of(trial)!.Instrument);
        InputException none = Assert.Throws<InputException>(() =>
            TrialReadings.ToTrial(
                Bridges.Table,
                new ReadingSet([Reading.Size("plinth.thickness", 2.5, "cal")]),
                new ExposureSettings(2.5),
                new TrialConditions(0.05)
            )
        );
        Assert.Contains("the bridge", none.Message, StringComparison.Ordinal);
    }
}
