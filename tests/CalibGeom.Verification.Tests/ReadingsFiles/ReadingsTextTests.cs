using CalibGeom.Verification.Readings;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.ReadingsFiles;

public class ReadingsTextTests
{
    private static readonly Gen<Reading> Any =
        from number in Gen.Choose(1, 9)
        from size in Gen.Choose(1_000_000, 400_000_000)
        from word in Gen.Choose(0, 3)
        from note in Gen.Elements("", "middle", "said \"so\", twice", "a;b")
        from instrument in Gen.Elements("", "cal", "my, caliper")
        from kind in Gen.Choose(0, 3)
        select kind switch
        {
            0 => Reading.Size($"box{number}.outside.x", size / 1e6, instrument, note),
            1 => Reading.Count("slots.open", number, note),
            2 => Reading.Felt($"joint{number}.fit", (FeltFit)word, note),
            _ => Reading.Stood($"column{number}.stood", (ColumnStage)word, note),
        };

    [Property(MaxTest = 200)]
    public Property WhatIsWrittenIsReadAsItWas() =>
        Prop.ForAll(
            Any.ArrayOf(7).ToArbitrary(),
            readings =>
            {
                ReadingSet read = ReadingsFile.Parse(
                    ReadingsFile.ToText(readings, "0123456789abcdef", PartState.Washed, Material.Flexible, "one line")
                );
                Assert.Equal(readings.Select(Told), read.Readings.Select(Told));
                Assert.Equal(
                    ("0123456789abcdef", PartState.Washed, Material.Flexible),
                    (read.Digest, read.State, read.Material)
                );
                Assert.Contains("one line", read.Comments);
            }
        );

    [Fact]
    public void WhatHasNoNoteNeedsNoColumnForIt()
    {
        Reading[] readings = [Reading.Size("box1.outside.x", 8), Reading.Count("slots.open", 6)];
        Assert.Equal("feature,value\nbox1.outside.x,8.00\nslots.open,6\n", ReadingsFile.ToText(readings));
        Assert.Throws<ArgumentException>(() => ReadingsFile.ToText(readings, remark: "two\nlines"));
    }

    private static (string Feature, ReadingKind Kind, double Value, string Instrument, string Note) Told(Reading r) =>
        (r.Feature.ToString(), r.Kind, Math.Round(r.Value, 6), r.Instrument, r.Note);
}
