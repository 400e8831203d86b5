using CalibGeom.Light;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Verification.Tests.Tuning;

public class PrintThroughResponseTests
{
    private static readonly WorkingCurve Curve = new(0.14, 8);

    [Fact]
    public void SlotsGiveDpAndTheDose()
    {
        Trial[] trials = new[] { 1.5, 2, 2.7, 3.6, 4.8, 6.4 }.Select(Comb).ToArray();
        PrintThroughResponse response = PrintThroughResponse.Learn(trials)!;
        Assert.InRange(response.PenetrationDepth, 0.10, 0.16);
        Assert.Equal(new LayerLight(Curve, 4, 3, 0.05).PrintThrough(), response.At(3).Mean, 0.03);
        Assert.All(response.Deviations, d => Assert.True(d < 2));
        Assert.InRange(response.DoseRatio(3), 2.5, 6); // 3.5 in truth, bracketed by slots a quarter apart
    }

    [Fact]
    public void ItAnswersSeveralTimesMoreStronglyThanSideGrowth() =>
        Assert.InRange(
            ExposurePriors.Default.PenetrationDepth.Median / ExposurePriors.Default.TimeEffect.Median,
            3,
            15
        );

    [Fact]
    public void LightThatChangedIsSeen()
    {
        Trial[] trials = [Comb(2), Comb(2), Comb(2), Comb(2), Comb(2) with { Slots = Make.Slots(1) }];
        Assert.True(PrintThroughResponse.Learn(trials)!.Deviations[^1] > 2);
        Assert.Contains(Tuner.Advise(trials).Findings, f => f.Rule == "light-changed");
        Assert.NotEqual(NextKind.Stop, Tuner.Advise(trials).Next.Kind);
    }

    [Fact]
    public void WithoutACombThereIsNothingToSay() => Assert.Null(PrintThroughResponse.Learn([Make.Trial(2, 0, 0)]));

    [Fact]
    public void EndsOfTheCombAreOpen()
    {
        Assert.Equal(double.NegativeInfinity, Make.Slots(8).HighestClosed);
        Assert.Equal(0.16, Make.Slots(8).LowestOpen);
        Assert.Equal(0.8, Make.Slots(0).HighestClosed);
        Assert.Equal(double.PositiveInfinity, Make.Slots(0).LowestOpen);
        Assert.Equal((0.25, 0.315), (Make.Slots(5).HighestClosed, Make.Slots(5).LowestOpen));
    }

    private static Trial Comb(double time)
    {
        double z = new LayerLight(Curve, 4, time, 0.05).PrintThrough();
        return new Trial(new ExposureSettings(time), Make.Conditions())
        {
            Slots = Make.Slots(SlotOutcome.StandardHeights.Count(h => h > z)),
        };
    }
}
