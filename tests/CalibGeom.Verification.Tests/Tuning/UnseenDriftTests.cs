using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Tuning;

/// <summary>Light that may move unseen widens what is said of the print to come, and nothing else.</summary>
public class UnseenDriftTests
{
    private static readonly ExposurePriors Steady = ExposurePriors.Default with { LightDrift = 0 };
    private static readonly ExposureSettings Same = new(2.5, 1);

    private static Trial[] Prints(params double[] growths) =>
        [
            .. growths.Select(
                (g, i) => Make.Trial(2.5, 1, g) with { Columns = Make.Columns(0.4), Slots = Make.Slots(4) }
            ),
        ];

    [Fact]
    public void IntervalsAreWiderAndNothingElseMoves()
    {
        Trial[] prints = Prints(0.020, 0.021, 0.019);
        ExposureResponse growth = ExposureResponse.Of(prints),
            steadyGrowth = ExposureResponse.Of(prints, Steady);
        Wider(steadyGrowth.IntervalAt(Same), growth.IntervalAt(Same));
        Assert.Equal(steadyGrowth.At(Same), growth.At(Same));
        PrintThroughResponse light = PrintThroughResponse.Of(prints)!,
            steadyLight = PrintThroughResponse.Of(prints, Steady)!;
        Wider(steadyLight.IntervalAt(2.5), light.IntervalAt(2.5));
        Assert.Equal(steadyLight.At(2.5), light.At(2.5));
        ColumnSurvival columns = ColumnSurvival.Of(prints)!,
            steadyColumns = ColumnSurvival.Of(prints, Steady)!;
        Wider(steadyColumns.LimitInterval(2.5), columns.LimitInterval(2.5));
        Wider(steadyColumns.ProbabilityInterval(0.4), columns.ProbabilityInterval(0.4));
        Assert.Equal(steadyColumns.Limit(2.5).Diameter, columns.Limit(2.5).Diameter);
        Assert.Equal(steadyColumns.Probability(0.4, 2.5), columns.Probability(0.4, 2.5));
    }

    /// <summary>The same growths in falling and in rising order: the print to come lies beyond the last.</summary>
    [Fact]
    public void ItGoesTheWayThePrintsWent()
    {
        double[] growths = [0.030, 0.026, 0.022, 0.018, 0.014, 0.010];
        Interval falling = ExposureResponse.Of(Prints(growths)).IntervalAt(Same),
            rising = ExposureResponse.Of(Prints([.. growths.Reverse()])).IntervalAt(Same);
        Assert.True(Middle(falling) < 0.018 && Middle(rising) > 0.022);
    }

    private static double Middle(Interval interval) => (interval.Low + interval.High) / 2;

    private static void Wider(Interval narrow, Interval wide) =>
        Assert.True(wide.High - wide.Low > 1.02 * (narrow.High - narrow.Low), $"{wide} is not wider than {narrow}");
}
