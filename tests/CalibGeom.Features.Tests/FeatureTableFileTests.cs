using System.Globalization;
using System.Text;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Features.Tests;

public class FeatureTableFileTests
{
    private static readonly FeatureTable Sample = new(
        [
            new Feature("box1.outside.x", 8.05, "mm", "x", "Outside jaws, mid band; \"light\" touch, twice"),
            new Feature("column1.stood", 1, "stage", "", "lost, plate,\nwash or cure"),
        ],
        "0123456789abcdef"
    );

    [Fact]
    public void CsvIsWrittenAfterRfc4180()
    {
        const string Expected =
            "# digest 0123456789abcdef\nfeature,nominal,unit,axis,how\n"
            + "box1.outside.x,8.05,mm,x,\"Outside jaws, mid band; \"\"light\"\" touch, "
            + "twice\"\ncolumn1.stood,1,stage,,\"lost, plate,\nwash or cure\"\n";
        Assert.Equal(Expected, FeatureTableCsv.ToText(Sample));
    }

    [Property(MaxTest = 200)]
    public FsCheck.Property WhatIsWrittenIsReadBack()
    {
        var texts = Gen.Elements("", "a", ",", "\"", "\"\"", "\n", "#", "micro \u00B5", "x\r\ny")
            .ListOf()
            .Select(string.Concat);
        var features =
            from how in texts
            from id in texts.Where(t => FeatureId.TryParse("id" + t) is not null)
            from head in Gen.Elements<double?>(null, 0.1, 1.6)
            from nominal in Gen.Choose(int.MinValue, int.MaxValue)
            select new Feature("id" + id, nominal / 8192.0 * Math.PI, "mm", "x", how) { HeadDiameter = head };
        return Prop.ForAll(
            features.ListOf().Select(f => new FeatureTable(f.DistinctBy(x => x.Id), "00ff00ff00ff00ff")).ToArbitrary(),
            table =>
            {
                FeatureTable csv = FeatureTableCsv.Parse(FeatureTableCsv.ToText(table));
                FeatureTable json = FeatureTableJson.Parse(FeatureTableJson.ToText(table));
                return csv.SequenceEqual(table.Select(f => f with { HeadDiameter = null }))
                    && json.SequenceEqual(table)
                    && csv.Digest == table.Digest
                    && json.Digest == table.Digest;
            }
        );
    }

    [Fact]
    public void ByteOrderMarksCrLfAndCommentsAreRead()
    {
        byte[] bytes =
        [
            0xEF,
            0xBB,
            0xBF,
            .. Encoding.UTF8.GetBytes(
                "# made by hand\r\n# digest 0123456789abcdef\r\nfeature,nominal,unit,axis,how\r\n\r\na,1,mm,x,\"b\"\r\n"
            ),
        ];
        using var stream = new MemoryStream(bytes);
        FeatureTable table = FeatureTableCsv.Read(stream);
        Assert.Equal("0123456789abcdef", table.Digest);
        Assert.Equal([new Feature("a", 1, "mm", "x", "b")], table);
    }

    [Theory]
    [InlineData("", "Line 1: a feature table begins with the header")]
    [InlineData("a,b\n", "Line 1: a feature table begins with the header")]
    [InlineData("# digest zz\n", "Line 1: a digest is 16 hex digits")]
    [InlineData("feature,nominal,unit,axis,how\na,1,mm,x,\"b\nc", "Line 2: a quoted field is not closed")]
    [InlineData("feature,nominal,unit,axis,how\na,1,mm,x,\"b\"c\n", "Line 2: text follows a closing quote")]
    [InlineData("feature,nominal,unit,axis,how\n\na,1,mm,x,b\"c\n", "a quote stands inside a field")]
    [InlineData("feature,nominal,unit,axis,how\na,1,mm,x,\"b\nc\"\na,1,mm,x,b\n", "Line 4: feature a stands twice")]
    [InlineData("feature,nominal,unit,axis,how\n=1+1,1,mm,x,b\n", "Line 2: \"=1+1\" is no feature id")]
    [InlineData("feature,nominal,unit,axis,how\na,1,mm,x, @b\n", "Line 2: the instruction \" @b\" begins as a formula")]
    [InlineData("feature,nominal,unit,axis,how\na,\"6,31\",mm,x,b\n", "Line 2: the nominal \"6,31\" is no number")]
    [InlineData("feature,nominal,unit,axis,how\na,NaN,mm,x,b\n", "Line 2: the nominal of a is no finite number")]
    [InlineData("feature,nominal,unit,axis,how\na,6,31,mm,x,b\n", "Line 2: 6 fields")]
    [InlineData("feature,nominal,unit,axis,how\na,6,inch,x,b\n", "Line 2: the unit of a is \"inch\"")]
    [InlineData("feature,nominal,unit,axis,how\na,6,mm,w,b\n", "Line 2: the axis of a is \"w\"")]
    [InlineData("feature,nominal,unit,axis,how\n ,6,mm,x,b\n", "Line 2: the feature has no id")]
    public void BadCsvIsRefusedByLine(string text, string message)
    {
        var thrown = Assert.Throws<InputException>(() => FeatureTableCsv.Parse(text));
        Assert.Contains(message, thrown.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{", "line 1")]
    [InlineData("[]", "line 1")]
    [InlineData("null", "a feature table has a list")]
    [InlineData("{}", "a feature table has a list")]
    [InlineData("{\"features\":[{\"feature\":\"a\",\n\"nominal\":\"x\"}]}", "$.features[0].nominal (line 2")]
    [InlineData("{\"features\":[{\"feature\":\"a\",\"nominal\":1}]}", "$.features[0]")]
    [InlineData(
        "{\"features\":[{\"feature\":\"a\",\"nominal\":1,\"unit\":\"inch\"}]}",
        "$.features[0]: the unit of a is \"inch\""
    )]
    [InlineData("{\"digest\":\"x\",\"features\":[]}", "$.digest: a digest is 16 hex digits")]
    public void BadJsonIsRefusedByPlace(string text, string message)
    {
        var thrown = Assert.Throws<InputException>(() => FeatureTableJson.Parse(text));
        Assert.Contains(message, thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void HugeAndBinaryInputIsRefused()
    {
        using var huge = new MemoryStream(new byte[FeatureTableCsv.MaximumBytes + 1]);
        Assert.Contains(
            "16384 KiB",
            Assert.Throws<InputException>(() => FeatureTableCsv.Read(huge)).Message,
            StringComparison.Ordinal
        );
        using var binary = new MemoryStream([0x23, 0xFF, 0x00]);
        Assert.Contains(
            "byte 2",
            Assert.Throws<InputException>(() => FeatureTableCsv.Read(binary)).Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("fr-FR")]
    [InlineData("tr-TR")]
    public void TheCultureChangesNothing(string culture)
    {
        string expected = FeatureTableCsv.ToText(Sample) + FeatureTableJson.ToText(Sample);
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Equal(expected, FeatureTableCsv.ToText(Sample) + FeatureTableJson.ToText(Sample));
            Assert.Equal(Sample, FeatureTableCsv.Parse(FeatureTableCsv.ToText(Sample)));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
