using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Verification.Tests.Tuning;

/// <summary>What a calibration before the watched state teaches, gauge by gauge.</summary>
public class LearntEffectsTests
{
    private static readonly double[] Times = [1.6, 2.0, 2.5, 3.1];

    /// <summary>A calibration of four prints, of which the last is watched.</summary>
    private static LearntEffects Of(Func<double, bool> growth, Func<double, bool> comb)
    {
        Trial[] prints =
        [
            .. Times.Select(t =>
            {
                Trial print = Make.Trial(t, 1, 0.005 + 0.03 * Math.Log(t / 2));
                return print with
                {
                    GrowthX = growth(t) ? print.GrowthX : null,
                    GrowthY = growth(t) ? print.GrowthY : null,
                    Slots = comb(t) ? Make.Slots(t < 2.3 ? 6 : 4) : null,
                };
            }),
        ];
        return LearntEffects.Of(TrendLog.Of([.. prints.Select((p, i) => new LogEntry(i + 1, p, false))]));
    }

    [Theory]
    [InlineData(true, true)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    [InlineData(false, false)]
    public void EachIsLearntFromThePrintsThatReadIt(bool growth, bool comb)
    {
        LearntEffects effects = Of(_ => growth, _ => comb);
        Assert.Equal(growth ? 4 : 0, effects.GrowthPrints);
        Assert.Equal(comb ? 4 : 0, effects.PrintThroughPrints);
        Assert.Equal(!growth, effects.Growth == LearntEffects.None.Growth);
        Assert.Equal(!comb, effects.PrintThrough == LearntEffects.None.PrintThrough);
        // What is learnt is narrower than what is believed before, and holds the effect of the prints.
        if (growth)
        {
            Assert.InRange(0.03, effects.Growth.Low, effects.Growth.High);
            Assert.True(effects.Growth.LogDeviation < LearntEffects.None.Growth.LogDeviation);
        }
        if (comb)
            Assert.True(effects.PrintThrough.LogDeviation < LearntEffects.None.PrintThrough.LogDeviation);
    }

    [Fact]
    public void PrintsWithoutAReadingAreNotCountedAndOneExposureTeachesNothing()
    {
        Assert.Equal((4, 2), Counts(Of(_ => true, t => t > 2.3)));
        Assert.Equal((0, 4), Counts(Of(t => t > 3, _ => true)));
    }

    private static (int, int) Counts(LearntEffects effects) => (effects.GrowthPrints, effects.PrintThroughPrints);
}
