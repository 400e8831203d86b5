using System.Text;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.TestObjects;

/// <summary>Specs that cannot be read, and what is said about them.</summary>
public class BadSpecTests
{
    [Theory]
    [InlineData("", "Line 1, column 1: not JSON")]
    [InlineData("nonsense", "Line 1, column 2: not JSON")]
    [InlineData("[1]", "$ (line 1, column 1): a spec is an object in braces, not a list.")]
    [InlineData("{\n  \"nest\": {", "Line 2, column 12: not JSON")]
    [InlineData("{}\n{}", "Line 2, column 1: not JSON")]
    [InlineData("{\"title\": 'a'}", "Line 1, column 11: not JSON")]
    [InlineData("{\"columns\": {\"copies\": NaN}}", "Line 1, column 24: not JSON")]
    [InlineData(
        "{\"spans\": {\"x\": 40,31}}",
        "Line 1, column 20: not JSON that a spec can be read from: '3' is an invalid start of a property name. "
            + "Expected a '\"'. Numbers have a decimal point, not a comma."
    )]
    [InlineData("{\"nets\": {}}", "$.nets (line 1, column 2): a spec has no \"nets\". Did you mean \"nest\"?")]
    [InlineData(
        "{\"nest\": {\"Sizes\": [8]}}",
        "$.nest.Sizes (line 1, column 11): nest has no \"Sizes\". Did you mean \"sizes\"?"
    )]
    [InlineData(
        "{\"colour\": 1}",
        "a spec has no \"colour\". Its names are title, process, plinth, nest, spans, columns, slots, bridge, squeeze, "
            + "pins, walls, labels, tilt."
    )]
    [InlineData("{\"headDiameter\": 1}", "There is columns.headDiameter.")]
    [InlineData("{\"nest\": {},\n \"nest\": {}}", "$.nest (line 2, column 2): this name stands twice; keep one.")]
    [InlineData("{\"nest\": {\"wall\": 1, \"wall\": 1}}", "$.nest.wall (line 1, column 22): this name stands twice")]
    [InlineData("{\"nest\": 3}", "$.nest (line 1, column 10): an object in braces or null is needed, not a number.")]
    [InlineData("{\"plinth\": null}", "$.plinth (line 1, column 12): plinth cannot be left out.")]
    [InlineData("{\"tilt\": null}", "$.tilt (line 1, column 10): tilt cannot be left out.")]
    [InlineData("{\"title\": null}", "$.title (line 1, column 11): a string is needed, not null.")]
    [InlineData(
        "{\"title\": \"a_b\"}",
        "$.title (line 1, column 11): title has a character U+005F at position 2 that cannot be drawn"
    )]
    [InlineData("{\"title\": \"\\ud800\"}", "$.title (line 1, column 11): half of a surrogate pair stands alone.")]
    [InlineData("{\"ti\\ud800\": \"\"}", "$ (line 1, column 2): half of a surrogate pair stands alone.")]
    [InlineData(
        "{\"nest\": {\"sizes\": [8, \"11\"]}}",
        "$.nest.sizes[1] (line 1, column 24): a number is needed, not a string."
    )]
    [InlineData(
        "{\"nest\": {\"sizes\": 8}}",
        "$.nest.sizes (line 1, column 20): a list in brackets is needed, not a number."
    )]
    [InlineData(
        "{\"nest\": {\"sizes\": []}}",
        "$.nest.sizes (line 1, column 20): nest.sizes has 0 entries; 1 to 8 are allowed."
    )]
    [InlineData(
        "{\"nest\": {\"sizes\": [8,\n 2]}}",
        "$.nest.sizes[1] (line 2, column 2): nest.sizes is 2 mm; the range is 3 to 100 mm."
    )]
    [InlineData("{\"nest\": {\"sizes\": [8, 1e999]}}", "the range is 3 to 100 mm.")]
    [InlineData(
        "{\"nest\": {\"clearances\": [0.05]}}",
        "$.nest.clearances (line 1, column 25): nest.clearances needs one entry for each pair of neighbouring "
            + "boxes: 2 for 3 boxes; it has 1."
    )]
    [InlineData(
        "{\"nest\": {\"clearances\": [0.05, [0.1]]}}",
        "$.nest.clearances[1] (line 1, column 32): nest.clearances has 1 numbers; 2 are needed."
    )]
    [InlineData("{\"nest\": {\"clearances\": [0.05, [0.1, 0.1, 0.1]]}}", "$.nest.clearances[1][2]")]
    [InlineData(
        "{\"nest\": {\"clearances\": [0.05, null]}}",
        "$.nest.clearances[1] (line 1, column 32): a number or [x, y] is needed, not null."
    )]
    [InlineData("{\"process\": {\"pixelPitch\": 0.6}}", "process.pixelPitch is 0.6 mm; the range is 0.005 to 0.5 mm.")]
    [InlineData(
        "{\"process\": {\"plate\": [100, 100]}}",
        "$.process.plate (line 1, column 23): process.plate has 2 numbers; 3 are needed."
    )]
    [InlineData(
        "{\"process\": {\"snap\": \"pixel\"}}",
        "process.snap is \"pixel\"; it must be \"pixels\" or \"none\". Did you mean \"pixels\"?"
    )]
    [InlineData(
        "{\"process\": {\"baseLayers\": 2.5}}",
        "$.process.baseLayers (line 1, column 28): process.baseLayers is 2.5; a whole number is needed."
    )]
    [InlineData(
        "{\"plinth\": {\"thickness\": 1, \"edgeChamfer\": 1}}",
        "$.plinth.edgeChamfer (line 1, column 44): plinth.edgeChamfer is 1 mm; it must be less than "
            + "plinth.thickness, 1 mm."
    )]
    [InlineData("{\"plinth\": {\"edgeChamfer\": 3}}", "$.plinth.edgeChamfer (line 1, column 28)")]
    [InlineData(
        "{\"title\": \"\u00B5\u00B5\", \"tilt\": 1}",
        "$.tilt (line 1, column 25): an object in braces is needed, not a number."
    )]
    [InlineData("{\"columns\": {\"copies\": true}}", "a number is needed, not true or false.")]
    public void IsRefusedWithItsPlace(string text, string message)
    {
        var thrown = Assert.Throws<InputException>(() => SpecJson.Parse(text));
        Assert.Contains(message, thrown.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', thrown.Message);
    }

    [Theory]
    [InlineData("columns.height", "columns.height: a value is set as name=value, such as columns.height=10.")]
    [InlineData("=3", "=3: a value is set as name=value")]
    [InlineData("columns.heigth=10", "columns.heigth=10: columns has no \"heigth\". Did you mean \"height\"?")]
    [InlineData("column.height=10", "column.height=10: a spec has no \"column\". Did you mean \"columns\"?")]
    [InlineData("columns.height.top=10", "a spec has no \"columns.height.top\"")]
    [InlineData(
        "columns.height=tall",
        "\"tall\" cannot be read as columns.height (1 to 60 mm). Write numbers with a decimal point."
    )]
    [InlineData("process.pixelPitch=0,04", "is 0 mm; the range is 0.005 to 0.5 mm. Numbers have a decimal point")]
    [InlineData("columns.height=6,31", "\"6,31\" cannot be read as columns.height")]
    [InlineData("columns.height=", "\"\" cannot be read as columns.height")]
    [InlineData("columns.height=[1]", "a number is needed, not a list.")]
    [InlineData("columns.height=NaN", "\"NaN\" cannot be read as columns.height")]
    [InlineData("columns.height=-1", "columns.height is -1 mm; the range is 1 to 60 mm.")]
    [InlineData("columns=5", "columns=5: a group is set to null, which leaves it out")]
    [InlineData("tilt=null", "tilt=null: tilt cannot be left out.")]
    [InlineData("tilt.axis=z", "tilt.axis is \"z\"; it must be \"x\" or \"y\".")]
    [InlineData("nest.sizes=8,11.2}", "cannot be read as nest.sizes")]
    [InlineData(
        "nest.clearances=0.1",
        "nest.clearances=0.1: nest.clearances needs one entry for each pair of neighbouring boxes: 2 for 3 "
            + "boxes; it has 1."
    )]
    public void AssignmentsAreRefusedByName(string assignment, string message)
    {
        var thrown = Assert.Throws<InputException>(() => SpecJson.With(new TestObjectSpec(), [assignment]));
        Assert.Contains(message, thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void HugeDocumentsAreRefusedUnread()
    {
        using var hundred = new EndlessStream(100_000_000);
        var thrown = Assert.Throws<InputException>(() => SpecJson.Read(hundred));
        Assert.Contains("larger than 1024 KiB", thrown.Message, StringComparison.Ordinal);
        Assert.InRange(hundred.Position, 0, 2 * SpecJson.MaximumBytes);
        Assert.Throws<InputException>(() => SpecJson.Parse(new string(' ', 100_000_000)));
    }

    [Fact]
    public void TenThousandColumnsAreRefusedAtTheFirstTooMany()
    {
        string text = $"{{\"columns\":{{\"diameters\":[{string.Join(",", Enumerable.Repeat("0.5", 10_000))}]}}}}";
        var thrown = Assert.Throws<InputException>(() => SpecJson.Parse(text));
        Assert.Contains(
            "$.columns.diameters[64] (line 1, column 282): columns.diameters has more than 64 entries",
            thrown.Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{\"nest\":")]
    public void DepthAThousandIsRefused(string opening)
    {
        string deep = string.Concat(Enumerable.Repeat(opening, 1000));
        Assert.Throws<InputException>(() => SpecJson.Parse(deep));
        Assert.Throws<InputException>(() => SpecJson.Parse($"{{\"nest\":{{\"clearances\":{deep}}}}}"));
    }

    [Fact]
    public void ManyUnknownNamesAreRefusedAtTheFirst()
    {
        string text = $"{{{string.Join(",", Enumerable.Range(0, 50_000).Select(i => $"\"n{i}\":1"))}}}";
        Assert.Contains(
            "\"n0\"",
            Assert.Throws<InputException>(() => SpecJson.Parse(text)).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void WhatIsNotUtf8IsRefused()
    {
        using var stream = new MemoryStream([
            .. Encoding.UTF8.GetBytes("{\"title\": \""),
            0xB5,
            .. Encoding.UTF8.GetBytes("\"}"),
        ]);
        Assert.Contains(
            "must be UTF-8 text; byte 12",
            Assert.Throws<InputException>(() => SpecJson.Read(stream)).Message,
            StringComparison.Ordinal
        );
    }

    /// <summary>A stream of spaces that does not need the memory.</summary>
    private sealed class EndlessStream(long length) : Stream
    {
        private long position;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => length;

        public override long Position
        {
            get => position;
            set => throw new NotSupportedException();
        }

        public override int Read(byte[] buffer, int offset, int count)
        {
            int read = (int)Math.Min(count, length - position);
            buffer.AsSpan(offset, read).Fill((byte)' ');
            position += read;
            return read;
        }

        public override void Flush() { }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
