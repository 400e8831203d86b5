using System.Text;
using CalibGeom.Verification.Readings;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.ReadingsFiles;

public class ReadingsFileTests
{
    [Fact]
    public void TheWholeOfTheContract()
    {
        ReadingSet set = ReadingsFile.Parse(
            "\uFEFF# digest 0123456789ABCDEF\r\n# temperature 23\r\n# state post-cured\r\n# instrument cal "
                + "resolution=0.01 mpe=0.02\r\n# instrument rod jaw=depth repeatability=0.01\r\n"
                + "# expansion 80e-6\r\n# material flexible\r\n# Demo grey, second "
                + "bottle\r\nfeature,value,unit,instrument,note\r\n"
                + "box1.outside.x,8.02,mm,cal,\"first, "
                + "dry\"\r\nbox1.outside.x,8.03,,cal,\r\nbox1.height,11990,um,rod\r\ncolumn7.stood,wash\r\nslots.open,6\r\njoint1.fit,Slides\r\nspan.x,1.5748,in\r\nbox2.outside.x,,mm,cal,not yet\r\n"
        );
        Assert.Equal("0123456789abcdef", set.Digest);
        Assert.Equal(23, set.Temperature);
        Assert.Equal(PartState.PostCured, set.State);
        Assert.Equal(80e-6, set.Expansion);
        Assert.Equal(Material.Flexible, set.Material);
        Assert.Equal(["Demo grey, second bottle"], set.Comments);
        Assert.Equal(7, set.Readings.Count);
        Assert.Equal("first, dry", set.Readings[0].Note);
        Assert.Equal(10, set.Readings[0].Line);
        Assert.Equal(11.99, set.Readings[2].Value, 12);
        Assert.Equal(ColumnStage.Wash, set.Readings[3].Stage);
        Assert.Equal(FeltFit.Slides, set.Readings[5].Fit);
        Assert.Equal(1.5748 * 25.4, set.Readings[6].Value, 12);
        Assert.Equal(0.02 / Math.Sqrt(3), set.InstrumentOf("cal").OutsideError, 12);
        Assert.Equal(Jaw.Depth, set.InstrumentOf("rod").Jaw);
        Assert.Equal(Instrument.DefaultOutsideError, set.InstrumentOf("other").OutsideError);
    }

    [Fact]
    public void SemicolonsAndTabsAreAccepted()
    {
        Assert.Equal(
            8.02,
            ReadingsFile.Parse("# state dry\nfeature;value;unit\nbox1.outside.x;8.02;mm\n").Readings[0].Value
        );
        Assert.Equal(8.02, ReadingsFile.Parse("feature\tvalue\nbox1.outside.x\t8.02\n").Readings[0].Value);
        Assert.Equal("a;b", ReadingsFile.Parse("value;feature;note\n8;box1.outside.x;\"a;b\"\n").Readings[0].Note);
    }

    [Fact]
    public void JsonSaysTheSame()
    {
        ReadingSet set = ReadingsFile.Parse(
            """
            {"digest": "0123456789abcdef", "temperature": 23, "state": "dry", "instruments": [{"name": "cal", "resolution": 0.01, "mpe": 0.02}],
             "readings": [{"feature": "box1.outside.x", "value": 8.02, "unit": "mm", "instrument": "cal", "note": "n"}, {"feature": "joint1.fit", "value": "binds"}]}
            """
        );
        Assert.Equal(PartState.Dry, set.State);
        Assert.Equal(8.02, set.Readings[0].Value);
        Assert.Equal(FeltFit.Binds, set.Readings[1].Fit);
        Assert.Single(set.Instruments);
    }

    [Theory]
    [InlineData("feature,value\nbox1.outside.x,\"6,31\"", "bench.csv:2: ", "Write 6.31")]
    [InlineData("feature,value,unit\nbox1.outside.x,6,31", "bench.csv:2: ", "Write 6.31")]
    [InlineData("feature,value,unit\nbox1.outside.x,6,31,mm", "bench.csv:2: ", "Write 6.31")]
    [InlineData("feature;value\nbox1.outside.x;6,3,1", "bench.csv:2: ", "no number")]
    [InlineData("feature,value,unit\nbox1.outside.x,6 um,mm", "bench.csv:2: ", "Write the unit once")]
    [InlineData(
        "feature,value\ncolumn1-3.stood,lost plate",
        "bench.csv:2: ",
        "stands for 3 features, but has 2 values"
    )]
    [InlineData("feature,value\ncolumn1-900000.stood,lost", "bench.csv:2: ", "more than 200")]
    [InlineData("feature,value\ncolumn1-3.stood,lost gone plate", "bench.csv:2: ", "column2.stood is \"gone\"")]
    [InlineData("feature,value\nbox1.outside.x,abc", "bench.csv:2: ", "no number")]
    [InlineData("feature,value\nbox1.outside.x,NaN", "bench.csv:2: ", "no number")]
    [InlineData("feature,value\nbox1.outside.x,1e999", "bench.csv:2: ", "no number")]
    [InlineData("feature,value\nbox1.outside.x,-8", "bench.csv:2: ", "over 0")]
    [InlineData("feature,value,unit\nbox1.outside.x,8,furlong", "bench.csv:2: ", "units are mm")]
    [InlineData("feature,value\n,8", "bench.csv:2: ", "feature is missing")]
    [InlineData("feature,value\njoint1.fit,loose", "bench.csv:2: ", "refuses, binds, slides, rattles")]
    [InlineData("feature,value\ncolumn1.stood,yes", "bench.csv:2: ", "lost, plate, wash, cure")]
    [InlineData("feature,value\nslots.open,2.5", "bench.csv:2: ", "whole number")]
    [InlineData("feature,value\nslots.open,-1", "bench.csv:2: ", "from 0")]
    [InlineData("feature,value,unit\nslots.open,3,mm", "bench.csv:2: ", "count")]
    [InlineData("feature,value,unit\njoint1.fit,slides,mm", "bench.csv:2: ", "fit")]
    [InlineData("feature,reading\nbox1.outside.x,8", "bench.csv:1: ", "feature,value,unit,instrument,note")]
    [InlineData("feature,unit\nbox1.outside.x,mm", "bench.csv:1: ", "feature and value")]
    [InlineData("box1.outside.x,8", "bench.csv:1: ", "feature,value,unit,instrument,note")]
    [InlineData("", "no readings", "feature,value")]
    [InlineData("feature,value\nbox1.outside.x,\"8", "bench.csv:2: ", "not closed")]
    [InlineData("feature,value\n\"a\"b,8", "bench.csv:2: ", "closing quote")]
    [InlineData("# temprature 23\nfeature,value\n", "bench.csv:1: ", "did you mean # temperature?")]
    [InlineData("# temperature warm\nfeature,value\n", "bench.csv:1: ", "no number")]
    [InlineData("# temperature 300\nfeature,value\n", "temperature is 300", "degrees C")]
    [InlineData("# state wet\nfeature,value\n", "bench.csv:1: ", "washed, dry, post-cured")]
    [InlineData("# state dry\n# state washed\nfeature,value\n", "bench.csv:2: ", "twice")]
    [InlineData("# digest 12\nfeature,value\n", "bench.csv:1: ", "16 hex digits")]
    [InlineData("# instrument resolution=0.01\nfeature,value\n", "bench.csv:1: ", "name")]
    [InlineData("# instrument cal mpe=5\nfeature,value\n", "bench.csv:1: ", "0 to 1")]
    [InlineData("# instrument cal colour=red\nfeature,value\n", "bench.csv:1: ", "resolution=")]
    [InlineData("# instrument cal jaw=upper\nfeature,value\n", "bench.csv:1: ", "outside, inside, depth")]
    [InlineData("# instrument cal\n# instrument cal\nfeature,value\n", "cal", "twice")]
    public void BadFilesSayWhereAndWhatToDo(string text, string where, string remedy)
    {
        InputException e = Assert.Throws<InputException>(() => ReadingsFile.Parse(text, "bench.csv"));
        Assert.StartsWith("bench.csv", e.Message, StringComparison.Ordinal);
        Assert.Contains(where, e.Message, StringComparison.Ordinal);
        Assert.Contains(remedy, e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AllErrorsAreSaidAtOnceUpToTwenty()
    {
        InputException e = Assert.Throws<InputException>(() =>
            ReadingsFile.Parse("feature,value\nbox1.outside.x,a\nbox1.outside.y,8\nslots.open,b\njoint1.fit,c", "r.csv")
        );
        Assert.Equal(["r.csv:2:", "r.csv:4:", "r.csv:5:"], e.Message.Split('\n').Select(l => l.Split(' ')[0]));
        e = Assert.Throws<InputException>(() =>
            ReadingsFile.Parse("feature,value\n" + string.Concat(Enumerable.Repeat("slots.open,b\n", 23)))
        );
        Assert.Contains("3 more lines", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void OneRowMayStandForSeveralFeatures()
    {
        ReadingSet set = ReadingsFile.Parse(
            "feature,value\ncolumn1-3.stood,cure\nA1/column5+2+8-7.stood,lost plate wash cure\ncolumn9.stood,lost\n"
        );
        Assert.Equal(
            [
                "column1.stood Cure",
                "column2.stood Cure",
                "column3.stood Cure",
                "A1/column5.stood Lost",
                "A1/column2.stood Plate",
                "A1/column8.stood Wash",
                "A1/column7.stood Cure",
                "column9.stood Lost",
            ],
            set.Readings.Select(r => $"{r.Feature} {r.Stage}")
        );
    }

    [Fact]
    public void DecimalCommasAndUnitsAreReadWhereTheyArePlain()
    {
        ReadingSet set = ReadingsFile.Parse(
            "feature;value;unit\nbox1.outside.x;6,31;mm\nbox1.outside.y;6,32 mm;\nbox2.outside.x;250um;\nspan.x;1,5748in;in\n"
        );
        Assert.Equal([6.31, 6.32, 0.25, 39.99992], set.Readings.Select(r => Math.Round(r.Value, 9)));
    }

    [Fact]
    public void HeaderLinesCountOnceTheyAreFilledIn()
    {
        ReadingSet set = ReadingsFile.Parse(
            "# temperature\n# state\n# digest\n# expansion\n# instrument\n# instrument cal resolution= mpe=\nfeature,value\n"
        );
        Assert.Equal((null, null, null, null), (set.Temperature, set.State, set.Digest, set.Expansion));
        Assert.Equal(Instrument.DefaultOutsideError, set.InstrumentOf("cal").OutsideError);
    }

    [Theory]
    [InlineData("{", "bench.json:1:2")]
    [InlineData("{\"reading\": []}", "$.reading")]
    [InlineData("{}", "\"readings\"")]
    [InlineData("{\"readings\": [{\"feature\": \"box1.outside.x\"}]}", "$.readings[0]")]
    [InlineData("{\"readings\": [{\"feature\": \"box1.outside.x\", \"value\": \"8,02\"}]}", "Write 8.02")]
    [InlineData("{\"readings\": [null]}", "$.readings[0]")]
    [InlineData(
        "{\"readings\": [{\"feature\": \"a\", \"value\": \"\\ud800\"}]}",
        "$.readings[0]: \"value\" is no Unicode"
    )]
    [InlineData("{\"readings\": [], \"state\": \"wet\"}", "$.state")]
    [InlineData("{\"readings\": [], \"digest\": \"x\"}", "$.digest")]
    [InlineData("{\"readings\": [], \"temperature\": 300}", "temperature is 300")]
    [InlineData("{\"readings\": [], \"instruments\": [{\"name\": \"a\", \"mpe\": -1}]}", "$.instruments[0]")]
    [InlineData("{\"readings\": [], \"readings\": []}", "readings")]
    [InlineData(
        "{\"readings\": [{\"feature\": \"box1.outside.x\", \"value\": 8, \"colour\": 1}]}",
        "$.readings[0].colour"
    )]
    public void BadJsonSaysWhere(string text, string where)
    {
        InputException e = Assert.Throws<InputException>(() => ReadingsFile.Parse(text, "bench.json"));
        Assert.Contains(where, e.Message, StringComparison.Ordinal);
    }

    [Property(MaxTest = 300)]
    public void NonsenseNeverCrashes(string? text, byte[] bytes, int cut)
    {
        const string Whole =
            "# state dry\n# instrument cal "
            + "mpe=0.02\nfeature,value,unit,instrument,note\nbox1.outside.x,8.02,mm,cal,\"a\"\nslots.open,6\n";
        string[] tries =
        [
            text ?? "",
            Whole[..(Math.Abs(cut % Whole.Length))] + text,
            "{" + text,
            "feature,value\n" + text,
            Whole.Insert(Math.Abs(cut % Whole.Length), text ?? ""),
        ];
        foreach (string t in tries)
            Survive(() => ReadingsFile.Parse(t));
        Survive(() => ReadingsFile.Read(new MemoryStream(bytes), "bytes"));
    }

    [Fact]
    public void NoTextAtAllIsRefused()
    {
        Assert.Contains(
            "UTF-8",
            Assert.Throws<InputException>(() => ReadingsFile.Read(new MemoryStream([0xC3, 0x28]), "x")).Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "16384 KiB",
            Assert
                .Throws<InputException>(() => ReadingsFile.Read(new MemoryStream(new byte[(16 << 20) + 1]), "x"))
                .Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void TheEmptyFileCanBeReadAndFilledIn()
    {
        string text = ReadingsSheet.Of(StandardObject.Table);
        Assert.Empty(ReadingsFile.Parse(text).Readings);
        Assert.Equal(StandardObject.Digest, ReadingsFile.Parse(text).Digest);
        string filled = text.Replace("box1.outside.x,,", "box1.outside.x,8.02,", StringComparison.Ordinal);
        Assert.Equal("outside jaws across the level band", ReadingsFile.Parse(filled).Readings.Single().Note);
    }

    [Fact]
    public void FilesOfDifferentConditionsAreNotPooled()
    {
        ReadingSet dry = ReadingsFile.Parse("# state dry\nfeature,value\n"),
            wet = ReadingsFile.Parse("# state washed\nfeature,value\n"),
            silent = ReadingsFile.Parse("feature,value\n");
        Assert.Contains(
            "state",
            Assert.Throws<InputException>(() => ReadingSet.Join([dry, wet])).Message,
            StringComparison.Ordinal
        );
        Assert.Equal(PartState.Dry, ReadingSet.Join([silent, dry]).State);
    }

    [Fact]
    public void LoadsFromDisk()
    {
        string path = Path.GetTempFileName();
        try
        {
            File.WriteAllText(path, "feature,value\nbox1.outside.x,8.02\n", Encoding.UTF8);
            Assert.Single(ReadingsFile.Read(path).Readings);
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static void Survive(Action read)
    {
        try
        {
            read();
        }
        catch (InputException e)
        {
            Assert.NotEmpty(e.Message);
        }
    }
}
