using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Tests.ReadingsFiles;

public class ReadingsSheetTests
{
    private static readonly FeatureTable Standard = TestObject.Of(new TestObjectSpec()).Features;

    [Fact]
    public void TheShortSheetOfTheStandardObjectHasSome25RowsInTheOrderOfWork()
    {
        string[] ids = Ids(ReadingsSheet.Of(Standard));
        Assert.InRange(ids.Length, 22, 28);
        Assert.DoesNotContain(
            ids,
            id =>
                id.EndsWith(".diameter", StringComparison.Ordinal)
                || id.StartsWith("slot1", StringComparison.Ordinal)
                || id.StartsWith("squeeze", StringComparison.Ordinal) && id.EndsWith("height", StringComparison.Ordinal)
        );
        int At(string id) => Array.IndexOf(ids, id);
        Assert.True(At("slots.open") < At("plinth.thickness"), "counts come before anything is touched");
        Assert.True(At("box1.height") < At("box1.outside.x"), "heights need boxes that stand");
        Assert.True(At("box1.outside.x") < At("joint1.fit"), "fits rub on the faces");
        Assert.Equal(ids.Length - 1, Math.Max(At("joint1.fit"), At("joint2.fit")));
    }

    [Fact]
    public void NothingStandsInItThatNobodyMeasured()
    {
        foreach (Preset preset in Presets.All)
        foreach (bool all in new[] { false, true })
        {
            string sheet = ReadingsSheet.Of(TestObject.Of(preset.Spec).Features, all);
            ReadingSet set = ReadingsFile.Parse(sheet);
            Assert.Empty(set.Readings);
            Assert.Equal((null, null), (set.Temperature, set.State));
            Assert.Equal(SpecDigest.Of(preset.Spec), set.Digest);
            Assert.False(ReadingsSheet.HoldsValues(sheet));
        }
    }

    [Fact]
    public void EveryColumnStandsInOneRowOfItsGridRow()
    {
        string sheet = ReadingsSheet.Of(Standard);
        string filled = string.Join(
            '\n',
            sheet.Split('\n').Select(l => l.Contains(".stood,") ? l.Replace(".stood,,", ".stood,cure,") : l)
        );
        IEnumerable<string> read = ReadingsFile.Parse(filled).Readings.Select(r => r.Feature.ToString());
        Assert.Equal(Standard.Where(f => f.Unit == "stage").Select(f => f.Id.ToString()).Order(), read.Order());
        Assert.True(ReadingsSheet.HoldsValues(filled));
    }

    [Fact]
    public void TheWholeSheetHasARowForEverything() =>
        Assert.Equal(
            Standard.Where(f => f.Unit != "stage").Select(f => f.Id.ToString()).Order(),
            Ids(ReadingsSheet.Of(Standard, all: true))
                .Where(id => !id.EndsWith(".stood", StringComparison.Ordinal))
                .Order()
        );

    [Theory]
    [InlineData("", false)]
    [InlineData("feature,value\nbox1.outside.x,8", true)]
    [InlineData("# state dry\nfeature,value\nbox1.outside.x,", true)]
    [InlineData("something else", true)]
    public void KnowsWhetherAFileHoldsValues(string text, bool holds) =>
        Assert.Equal(holds, ReadingsSheet.HoldsValues(text));

    private static string[] Ids(string sheet) =>
        sheet
            .Split('\n')
            .SkipWhile(l => !l.StartsWith("feature,", StringComparison.Ordinal))
            .Skip(1)
            .Where(l => l.Length > 0)
            .Select(l => l.Split(',')[0])
            .ToArray();
}
