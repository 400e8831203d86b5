using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Tests.ReadingsFiles;

public class ReadingTests
{
    [Fact]
    public void APrefixNamesTheCoupon()
    {
        Reading r = Reading.Size("A1/box1.outside.x", 8.02);
        Assert.Equal(("A1", "box1.outside.x"), (r.Coupon, r.Id.ToString()));
        Assert.Equal("", Reading.Size("box1.outside.x", 8.02).Coupon);
    }

    [Fact]
    public void ValuesOutOfRangeAreRefused()
    {
        Assert.Throws<ArgumentException>(() => Reading.Size("box1.outside.x", double.NaN));
        Assert.Throws<ArgumentException>(() => Reading.Size("box1.outside.x", 1001));
        Assert.Throws<ArgumentException>(() => Reading.Size("slots.open", 3));
        Assert.Throws<ArgumentException>(() => Reading.Size(" ", 3));
        Assert.Throws<ArgumentException>(() => Reading.Size(new string('a', 300), 3));
        Assert.Throws<ArgumentException>(() => Reading.Count("slots.open", 1001));
        Assert.Throws<ArgumentException>(() => Reading.Felt("joint1.fit", (FeltFit)9));
        Assert.Throws<ArgumentException>(() => Reading.Stood("column1.stood", (ColumnStage)9));
        Assert.Throws<ArgumentException>(() => new Instrument("a", resolution: 2));
        Assert.Throws<ArgumentException>(() => Instrument.WithPermissibleError("a", double.NaN));
        Assert.Throws<ArgumentException>(() => new ReadingSet([], temperature: 100));
        Assert.Throws<ArgumentException>(() => new ReadingSet([], expansion: 1));
        Assert.Throws<ArgumentException>(() => new ReadingSet([], [new Instrument("a"), new Instrument("a")]));
        Assert.Throws<ArgumentException>(() => ReadingSet.Join([]));
    }

    [Fact]
    public void PermissibleErrorsBecomeStandardUncertainties()
    {
        Instrument i = Instrument.WithPermissibleError("cal", 0.02);
        Assert.Equal(0.0115470054, i.ErrorOf(Jaw.Outside), 9);
        Assert.Equal(0.0173205081, i.ErrorOf(Jaw.Inside), 9);
        Assert.Equal(0.04 / Math.Sqrt(3), i.ErrorOf(Jaw.Depth), 9);
    }
}
