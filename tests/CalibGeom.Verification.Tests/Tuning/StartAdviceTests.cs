using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Tuning.Beginnings;

namespace CalibGeom.Verification.Tests.Tuning;

/// <summary>First settings, each worked out from its own rule.</summary>
public class StartAdviceTests
{
    // exp(change of layer / Dp), Dp 0.12 mm being the middle of what is believed.
    [Theory]
    [InlineData(2.5, 0.05, null, 2.5)]
    [InlineData(2.5, 0.05, 0.05, 2.5)]
    [InlineData(2.5, 0.03, 0.05, 2.12)]
    [InlineData(2.5, 0.10, 0.05, 3.79)]
    public void TheMakersTimeIsCarriedOverToTheLayer(double time, double layer, double? makerLayer, double expected)
    {
        var advice = StartAdvice.OfMaker(time, layer, makerLayer);
        Assert.Equal(new ExposureSettings(expected, 1), advice.Settings);
        Assert.Equal(expected / 1.8, advice.Range.Low, 0.01);
        Assert.Equal(expected * 1.8, advice.Range.High, 0.01);
        Assert.Equal((5, Math.Round(10 * expected, 0)), (advice.BaseLayers, Math.Round(advice.BaseTime, 0)));
        Assert.Equal(layer != (makerLayer ?? layer), advice.Reason.Contains("carried over", StringComparison.Ordinal));
        Assert.ThrowsAny<ArgumentException>(() => StartAdvice.OfMaker(0, layer));
        Assert.ThrowsAny<ArgumentException>(() => StartAdvice.OfMaker(time, 1.1));
    }

    // Two layers are cured where E = Ec exp(2 h / Dp).
    [Fact]
    public void TheCurveGivesTheTimeOfTwoLayers()
    {
        var quoted = new QuotedLight(0.12, 4, 4);
        var advice = StartAdvice.OfCurve(quoted, 0.05);
        Assert.Equal(Math.Round(4 * Math.Exp(0.1 / 0.12) / 4, 2), advice.Settings.Time);
        Assert.True(advice.Range.High / advice.Range.Low > 10, $"{advice.Range}");
        Assert.Equal(advice.Settings.Time * advice.Settings.Time, advice.Range.Low * advice.Range.High, 0.05);
    }

    [Fact]
    public void ANeighbourHandsOverItsCycleAndItsRest()
    {
        Trial[] trials = [Make.Trial(2.5, 0.8, 0.001) with { Cycle = new LayerCycle(8, 31, 6) }];
        ExposureSettings kept = Tuner.Run(trials).Next.Keep;
        var same = StartAdvice.OfNeighbour(trials, 0.05);
        Assert.Equal(new ExposureSettings(Math.Round(kept.Time, 2), kept.Rest), same.Settings);
        Assert.Equal((8, 31.0), (same.BaseLayers, same.BaseTime));
        Assert.Equal(same.Settings.Time * 1.5, same.Range.High, 0.01);
        var thicker = StartAdvice.OfNeighbour(trials, 0.08);
        Assert.Equal(kept.Time * Math.Exp(0.03 / 0.12), thicker.Settings.Time, 0.006);
        Assert.Throws<ArgumentException>(() => StartAdvice.OfNeighbour([], 0.05));
    }
}
