using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.Tuning;

/// <summary>Where an offset moves by whole pixels, light and rest take up what is left.</summary>
public class WholePixelTests
{
    private static readonly TuneOptions Pixels = TuneOptions.Default with { Pixel = 0.04 };

    [Property(MaxTest = 25)]
    public Property NoStepLeavesItsBounds() =>
        Prop.ForAll(
            PlannerTests.RandomTrials(),
            trials =>
            {
                ExposureSettings last = trials[^1].Settings,
                    to = Tuner.Next(trials, Pixels).Settings;
                double ratio = to.Time / last.Time,
                    whole = to.EdgeOffset / 0.04;
                return ratio <= 1 + 2 * Pixels.MostUp + 1e-9
                    && ratio >= 1 - 2 * Pixels.MostDown - 1e-9
                    && to.Rest >= last.Rest
                    && to.Rest - last.Rest <= Pixels.MostRestStep + 1e-9
                    && (to.EdgeOffset == last.EdgeOffset || Math.Abs(whole - Math.Round(whole)) < 1e-9);
            }
        );

    [Fact]
    public void ATightFirstPrintGetsRestAndIsNoMatterOfDesign()
    {
        // Half a pixel is more than what is left: the offset cannot help.
        Trial tight = Make.Trial(2.5, 0.5, 0.0105) with
        {
            Columns = Make.Columns(0.3),
            Slots = Make.Slots(6),
        };
        TuningResult result = Tuner.Run([tight], Pixels);
        Assert.Equal(NextKind.Change, result.Next.Kind);
        Assert.True(result.Next.Settings.Rest > 0.5);
        Assert.Equal((2.5, 0), (result.Next.Settings.Time, result.Next.Settings.EdgeOffset));
        Assert.DoesNotContain(result.Findings, f => f.Rule == "design");
    }

    [Fact]
    public void APrintOnTargetKeepsItsRest()
    {
        Trial fits = Make.Trial(2.5, 0.5, 0.0005, 0.001) with { Columns = Make.Columns(0), Slots = Make.Slots(6) };
        Assert.Equal(fits.Settings, Tuner.Next([fits, fits], Pixels).Settings);
        // Where any offset can be had, rest makes room for light.
        Assert.True(Tuner.Next([fits, fits], TuneOptions.Default).Settings.Rest > 0.5);
    }

    [Fact]
    public void ThePitchOfTheLastTrialCountsUnlessAnotherIsNamed()
    {
        Trial print = Make.Trial(2.5, 3, 0.045) with { Slots = Make.Slots(5), Pixel = new PerAxis(0.04, 0.05) };
        Assert.Equal(new PerAxis(0.04, 0.05), Tuner.Run([print, print]).Options.Pixel);
        Assert.Equal(new PerAxis(0.03, 0.03), Tuner.Run([print], Pixels with { Pixel = 0.03 }).Options.Pixel);
        Assert.Null(Tuner.Run([print with { Pixel = null }]).Options.Pixel);
    }

    [Theory]
    [InlineData(0.004)]
    [InlineData(0.51)]
    public void APitchOfNoPrinterIsRefused(double pitch)
    {
        Assert.Throws<ArgumentException>(() => Make.Trial(2.5, 3, 0) with { Pixel = pitch });
        Assert.Throws<ArgumentException>(() => TuneOptions.Default with { Pixel = pitch });
    }

    [Fact]
    public void OnlyWhatMovesIsSaidToOpenTheGap()
    {
        Trial tight = Make.Trial(2.5, 0.5, 0.0105, 0.001) with { Columns = Make.Columns(0.3), Slots = Make.Slots(6) };
        TuningResult result = Tuner.Run([tight, tight], Pixels);
        Finding said = result.Findings.Single(f => f.Rule == "tight");
        Assert.Contains("rest opens the gap", said.Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain("offset", said.Remedy, StringComparison.Ordinal);
    }
}
