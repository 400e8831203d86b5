using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Tests.Clearances;

public class CombTests
{
    private static ClearancePrediction Predict(Func<Feature, bool> kept, params Reading[] counts) =>
        ClearancePrediction.From(
            new FeatureTable(StandardObject.Table.Where(kept).Select(f => f with { Openings = [] })),
            new ReadingSet([.. StandardObject.Exact(0, 0.01, 0, 0.01).Readings, .. counts], state: PartState.PostCured)
        );

    [Fact]
    public void CountsLieBetweenTheSlotsThatClosedAndThoseThatDidNot()
    {
        ClearancePrediction p = Predict(_ => true, Reading.Count("slots.open", 6), Reading.Count("squeeze.open", 3));
        Assert.Equal((0.2, 0.25), (p.PrintThrough!.Low, p.PrintThrough.High));
        // Two of five slots of 0.5 mm closed: each lost what print-through left of it, the third lost less.
        Assert.Equal(2 * (0.5 - 0.25), p.Squeeze!.Low, 1e-12);
        Assert.Equal(3 * (0.5 - 0.2), p.Squeeze.High, 1e-12);
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
