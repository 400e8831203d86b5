using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Tests.Clearances;

public class CombTests
{
    private static ClearancePrediction Predict(Func<Feature, bool> kept, params Reading[] counts) =>
        ClearancePrediction.Of(
            new FeatureTable(StandardObject.Table.Where(kept).Select(f => f with { Openings = [] })),
            new ReadingSet(
                [.. StandardObject.Exact(0, 0.01, 0, 0.01).Readings, .. counts],
                state: PartState.PostCured,
                material: Material.Rigid
            )
        );

    [Fact]
    public void CountsLieBetweenTheSlotsThatClosedAndThoseThatDidNot()
    {
        ClearancePrediction p = Predict(_ => true, Reading.Count("slots.open", 6), Reading.Count("squeeze.open", 3));
        Assert.Equal((0.2, 0.25), (p.PrintThrough!.Low, p.PrintThrough.High));
        // Slots of 0.1, 0.16, 0.25, 0.4 and 0.5 mm: print-through alone closes the first two, so nothing need be lost;
        // the third, of 0.25 mm, lost less than the 0.05 mm that it keeps beside a print-through of 0.2 mm.
        Assert.Equal(0, p.Squeeze!.Low, 1e-12);
        Assert.Equal(0.25 - 0.2, p.Squeeze.High, 1e-12);
    }

    [Fact]
    public void ACombWithoutKnownHeightsIsNotGuessed()
    {
        ClearancePrediction p = Predict(
            f => f.Id.Part != KnownFeatures.Slot,
            Reading.Count("slots.open", 6),
            Reading.Count("squeeze.open", 3)
        );
        Assert.Null(p.PrintThrough);
        Assert.Null(p.Squeeze);
        Finding finding = Assert.Single(p.Findings, f => f.Rule == "slot-heights-unknown");
        Assert.Equal("slots.open", finding.Subject);
    }

    [Fact]
    public void ATabWithoutKnownHeightsIsNotGuessed()
    {
        ClearancePrediction p = Predict(
            f => f.Id is not { Part: KnownFeatures.Squeeze, Size: KnownFeatures.Height },
            Reading.Count("slots.open", 6),
            Reading.Count("squeeze.open", 3)
        );
        Assert.NotNull(p.PrintThrough);
        Assert.Null(p.Squeeze);
        Assert.Equal("squeeze.open", Assert.Single(p.Findings, f => f.Rule == "slot-heights-unknown").Subject);
    }

    [Fact]
    public void NothingIsSaidOfWhatNobodyCounted() =>
        Assert.DoesNotContain(
            Predict(f => f.Id.Part != KnownFeatures.Slot).Findings,
            f => f.Rule == "slot-heights-unknown"
        );
}
