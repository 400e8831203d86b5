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
        PrintThroughResponse response = PrintThroughResponse.Of(trials)!;
        Assert.InRange(response.PenetrationDepth, 0.10, 0.16);
        Assert.Equal(new LayerLight(Curve, 4, 3, 0.05).PrintThrough(), response.At(3).Mean, 0.03);
        Assert.True(response.Known);
        // One exposure of 3 s cures 0.14 ln(12 / 8) = 0.0568 mm, 1.14 layers; slots stand a quarter apart.
        Assert.InRange(response.CuredLayers(3, 0.05), 0.5, 2.6);
        Assert.InRange(response.ChanceOfLayers(3, 0.05, 1.14), 0.02, 0.98);
    }

    [Fact]
    public void LightThatChangedIsSeenInRepeatPrintsOnly()
    {
        Trial[] trials = [Comb(2), Comb(2), Comb(2) with { Slots = Make.Slots(1) }];
        Assert.Contains(Tuner.Run(trials).Findings, f => f.Rule == "light-changed");
        Assert.DoesNotContain(Tuner.Run([Comb(2), Comb(6)]).Findings, f => f.Rule == "light-changed");
    }

    [Theory]
    [InlineData(8, "less than about 0.16 mm")]
    [InlineData(0, "more than about 0.80 mm")]
    public void ACombThatIsAllOpenOrAllClosedIsABound(int open, string told)
    {
        Trial trial = Make.Trial(2, 0, 0) with { Slots = Make.Slots(open) };
        PrintThroughResponse response = PrintThroughResponse.Of([trial, trial])!;
        Assert.False(response.Known);
        // Nothing is learnt of Dp beside what was believed: the middle stays where it was within the width of the
        // prior.
        Assert.InRange(response.PenetrationDepth, 0.06, 0.25);
        string message = Tuner.Run([trial]).Findings.Single(f => f.Rule == "print-through").Message;
        Assert.Contains(told, message, StringComparison.Ordinal);
        Assert.Contains("dose and Dp are not known", message, StringComparison.Ordinal);
    }

    [Fact]
    public void AQuotedCurveIsAStartAndSlotsOverruleIt()
    {
        // The sheet says half the Ec that the combs show.
        var quoted = new QuotedLight(0.14, 4, 4);
        Trial bare = Make.Trial(3, 0, 0);
        double before = PrintThroughResponse.Of([bare], null, quoted)!.CuredLayers(3, 0.05),
            spread = PrintThroughResponse.Of([bare], null, quoted)!.At(3).Uncertainty;
        Assert.Equal(0.14 * Math.Log(3) / 0.05, before, 0.5);
        Assert.True(spread > 0.14); // a factor of e in dose is one standard deviation between laboratories
        Trial[] combs = [.. new[] { 2, 3, 4.5 }.Select(Comb)];
        Assert.Equal(
            new LayerLight(Curve, 4, 3, 0.05).PrintThrough(),
            PrintThroughResponse.Of(combs, null, quoted)!.At(3).Mean,
            0.03
        );
    }

    [Fact]
    public void WithoutACombThereIsNothingToSay() => Assert.Null(PrintThroughResponse.Of([Make.Trial(2, 0, 0)]));

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
