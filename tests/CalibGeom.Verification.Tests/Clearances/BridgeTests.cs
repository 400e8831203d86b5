using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Tests.Clearances;

/// <summary>Print-through from a bridge, beside a comb and without one.</summary>
public class BridgeTests
{
    private static ClearancePrediction Predict(double? beam, params Reading[] counts) =>
        ClearancePrediction.Of(
            Bridges.Table,
            new ReadingSet(
                [
                    .. StandardObject.Exact(0, 0.01, 0, 0.01).Readings,
                    .. counts,
                    .. beam is { } mm ? new[] { Reading.Size("bridge.thickness", mm) } : [],
                ],
                state: PartState.PostCured,
                material: Material.Rigid
            )
        );

    [Fact]
    public void WithoutACombItBracketsByTwoStandardUncertainties()
    {
        Bracket bracket = Predict(2.30).PrintThrough!;
        Assert.Equal(0.30, (bracket.Low + bracket.High) / 2, 1e-9);
        // Repeatability 0.008, form 0.006 and a permissible error of 0.02 over the root of three, mm; a little beside
        // them for the step of the display.
        Assert.Equal(2 * Math.Sqrt(0.008 * 0.008 + 0.006 * 0.006 + 0.02 * 0.02 / 3), bracket.High - 0.30, 0.004);
        Assert.Null(Predict(null).PrintThrough);
        // Light makes no beam thinner: what is clearly so is set aside, and said.
        ClearancePrediction thin = Predict(1.9);
        Assert.Null(thin.PrintThrough);
        Assert.Contains(thin.Findings, f => f.Rule == "reading-far-off");
    }

    [Theory]
    [InlineData(2.26, false)]
    [InlineData(2.22, false)]
    [InlineData(2.35, true)]
    [InlineData(2.10, true)]
    public void TheCombCountsAndContradictionsAreSaid(double beam, bool said)
    {
        ClearancePrediction p = Predict(beam, Reading.Count("slots.open", 6));
        Assert.Equal((0.2, 0.25), (p.PrintThrough!.Low, p.PrintThrough.High));
        Assert.Equal(said, p.Findings.Any(f => f.Rule == "bridge-against-comb"));
    }

    [Fact]
    public void ABridgeThatIsNoCombIsNotHeldAgainstTheTabAsOne()
    {
        ClearancePrediction p = Predict(2.30, Reading.Count("squeeze.open", 5));
        Assert.NotNull(p.Squeeze);
        Assert.DoesNotContain(p.Findings, f => f.Rule is "tab-against-comb" or "bridge-against-comb");
    }

    [Theory]
    [InlineData(2.6, false)]
    [InlineData(2.5, false)]
    [InlineData(3.2, true)]
    [InlineData(20.2, true)]
    public void OnlyWhatLightCannotAddIsASlip(double beam, bool slip)
    {
        ClearancePrediction p = Predict(beam);
        Assert.Equal(slip, p.Findings.Any(f => f.Rule == "reading-far-off" && f.Subject == "bridge.thickness"));
        Assert.Equal(slip, p.PrintThrough is null);
    }
}
