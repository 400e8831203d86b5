using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Tests.Clearances;

public class SlipTests
{
    private const string Good = "feature,value,unit\nspan.x,40.02\nbox3.outside.x,16.02\n";

    private static Finding[] Find(string rows) =>
        ClearancePrediction.Of(StandardObject.Table, ReadingsFile.Parse(Good + rows)).Findings.ToArray();

    [Theory]
    [InlineData("box1.outside.x,0.315", "looks like inches")]
    [InlineData("box1.outside.x,8.02,in", "millimetres marked as inches")]
    [InlineData("box1.outside.x,80.2", "doubled zero")]
    [InlineData("box1.outside.x,802", "lost decimal point")]
    [InlineData("box1.outside.x,0.802", "shifted decimal point")]
    [InlineData("box2.outside.x,8.08", "inside and outside swapped")]
    [InlineData("box2.inside.x,11.22", "inside and outside swapped")]
    [InlineData("box1.outside.x,11.21", "looks like box2.outside.x")]
    [InlineData("box1.outside.x,13.1", "set aside")]
    public void FarOffReadingsAreSetAsideAndSaidWhatTheyLookLike(string row, string looksLike)
    {
        Finding finding = Assert.Single(Find(row), f => f.Rule == "reading-far-off");
        Assert.Contains(looksLike, finding.Message, StringComparison.Ordinal);
        Assert.Contains("readings:4: ", finding.Message, StringComparison.Ordinal);
        Assert.Contains("set aside", finding.Message, StringComparison.Ordinal);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(row.Split(',')[0], finding.Subject);
    }

    [Fact]
    public void AZeroTooManyIsAskedAbout()
    {
        Finding finding = Assert.Single(Find("box1.outside.x,8.005"), f => f.Rule == "doubled-zero");
        Assert.Contains("Was it 8.05?", finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Find("box1.outside.x,8.05"), f => f.Rule == "doubled-zero");
        Assert.DoesNotContain(Find("box1.outside.x,8.015"), f => f.Rule == "doubled-zero");
    }

    [Fact]
    public void AnInstrumentThatShowsThousandthsIsBelieved()
    {
        Assert.DoesNotContain(Find("box1.outside.x,8.005\nbox2.outside.x,11.213"), f => f.Rule == "doubled-zero");
        // Another instrument's thousandths say nothing of this one, nor do those of one that is declared to show
        // hundredths.
        ReadingSet other = ReadingsFile.Parse(
            "feature,value,unit,instrument\nbox1.outside.x,8.005,,a\nbox2.outside.x,11.213,,b\n"
        );
        ReadingSet declared = ReadingsFile.Parse(
            "# instrument a resolution=0.01\nfeature,value,unit,instrument\nbox1.outside.x,8.005,,a\nbox2.outside.x,11.213,,a\n"
        );
        Assert.All(
            new[] { other, declared },
            set =>
                Assert.Contains(
                    ClearancePrediction.Of(StandardObject.Table, set).Findings,
                    f => f.Rule == "doubled-zero"
                )
        );
    }

    [Theory]
    [InlineData(
        "span.x,40.01,in",
        "span.x is 40.01 in, that is 1016.254 mm; a size is at most 1000 mm. Is the unit wrong? If 40.01 are "
            + "millimetres"
    )]
    [InlineData("span.x,400.1,cm", "If 400.1 are millimetres")]
    [InlineData("span.x,40010", "If 40010 are micrometres, write um")]
    public void AnImpossibleSizeAsksForItsUnit(string row, string said) =>
        Assert.Contains(
            said,
            Assert.Throws<InputException>(() => ReadingsFile.Parse("feature,value,unit\n" + row + "\n")).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void AThinColumnMayGrowAFifth()
    {
        Assert.DoesNotContain(Find("column1.diameter,0.33"), f => f.Rule == "reading-far-off");
        Assert.Contains(Find("slots.open,9"), f => f.Rule == "count-too-high");
    }

    [Theory]
    [InlineData("box1.outsde.x,8.02", "Did you mean box1.outside.x?")]
    [InlineData("A1/box1.outside.z,8.02", "Did you mean box1.outside.x?")]
    [InlineData("joint3.fit,slides", "Did you mean joint1.fit?")]
    [InlineData("something.entirely.else,8.02", "Is it another object's?")]
    [InlineData("reference.middle.8,8.02", "reference.outside.10")]
    public void UnknownIdsGetTheNearestKnownOne(string row, string hint)
    {
        InputException e = Assert.Throws<InputException>(() =>
            ClearancePrediction.Of(StandardObject.Table, ReadingsFile.Parse("feature,value\n" + row))
        );
        Assert.Contains(hint, e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void APrefixedIdMatchesThePlainFeature()
    {
        ClearancePrediction p = ClearancePrediction.Of(
            StandardObject.Table,
            ReadingsFile.Parse("feature,value\nA1/box1.outside.x,8.02\nA1/box2.inside.x,8.08")
        );
        Assert.Equal(2, p.Residuals.Count);
    }
}
