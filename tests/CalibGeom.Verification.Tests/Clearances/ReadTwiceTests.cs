using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Tests.Clearances;

public class ReadTwiceTests
{
    private static ReadingSet With(params int[] counts) =>
        new([
            .. StandardObject.Exact(0, 0.01, 0, 0.01, null).Readings,
            .. counts.Select(n => Reading.Count("slots.open", n)),
        ]);

    private static Finding? Said(ReadingSet set, string rule) =>
        ClearancePrediction.Of(StandardObject.Table, set).Findings.SingleOrDefault(f => f.Rule == rule);

    [Fact]
    public void CountsThatDifferAreSaidAndOneIsTaken()
    {
        Assert.Null(Said(With(5), "counts-differ"));
        Assert.Null(Said(With(5, 5), "counts-differ"));
        Assert.Contains(
            "counted as 8 and 2; 2 is taken",
            Said(With(8, 2), "counts-differ")!.Message,
            StringComparison.Ordinal
        );
        Assert.Equal(2, With(8, 2).CountOf(KnownFeatures.SlotsOpen));
        Assert.Equal(5, With(8, 2, 5).CountOf(KnownFeatures.SlotsOpen));
        Assert.Null(With().CountOf(KnownFeatures.SlotsOpen));
    }

    /// <summary>The line of an instrument stands in every sheet; only what is filled in describes it.</summary>
    [Theory]
    [InlineData("resolution= mpe=", true)]
    [InlineData("resolution=0.01 mpe=", false)]
    [InlineData("resolution= mpe=0.02", false)]
    public void ALineWithNothingFilledInDescribesNoInstrument(string line, bool said)
    {
        ReadingSet set = ReadingsFile.Parse(
            $"# instrument cal {line}\nfeature,value,unit,instrument,note\nbox1.outside.x,8.02,mm,cal,\nbox2.inside.x,8.08,mm,cal,\n"
        );
        Assert.Equal(said, Said(set, "instrument-undeclared") is not null);
    }
}
