using CalibGeom.TestObjects.Parts.Columns;
using CalibGeom.TestObjects.Parts.Nest;
using CalibGeom.TestObjects.Parts.Plinth;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.TestObjects;

public class SpecRecordTests
{
    [Fact]
    public void SpecsCompareByValue()
    {
        var one = new TestObjectSpec
        {
            Nest = new NestSpec { Sizes = [8, 11.2] },
            Columns = new ColumnsSpec { Diameters = [0.3, 0.4] },
        };
        var same = new TestObjectSpec
        {
            Nest = new NestSpec { Sizes = [8, 11.2] },
            Columns = new ColumnsSpec { Diameters = [0.3, 0.4] },
        };
        Assert.Equal(one, same);
        Assert.Equal(one.GetHashCode(), same.GetHashCode());
        Assert.NotEqual(one, one with { Columns = new ColumnsSpec { Diameters = [0.3, 0.5] } });
    }

    [Fact]
    public void ClearancesFollowTheBoxesUntilTheyAreGiven()
    {
        Assert.Equal([0.05, 0.05], new NestSpec().Clearances);
        Assert.Equal([0.05], new NestSpec { Sizes = [8, 11.2] }.Clearances);
        Assert.Empty(new NestSpec { Sizes = [8] }.Clearances);
        Assert.Equal(new NestSpec(), new NestSpec { Clearances = [0.05, 0.05] });
        Assert.Equal(new NestSpec().GetHashCode(), new NestSpec { Clearances = [0.05, 0.05] }.GetHashCode());
    }

    [Fact]
    public void ClearancesMustMatchTheBoxes()
    {
        var nest = new NestSpec { Clearances = [0.05] };
        var thrown = Assert.Throws<ArgumentException>(() => new TestObjectSpec { Nest = nest });
        Assert.Contains("2 for 3 boxes; it has 1", thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void WithChecksToo()
    {
        var thrown = Assert.Throws<ArgumentOutOfRangeException>(() => new NestSpec() with { Wall = 0.1 });
        Assert.Equal("Wall", thrown.ParamName);
        Assert.Contains("nest.wall is 0.1 mm; the range is 0.4 to 10 mm.", thrown.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void NumbersMustBeFinite(double value) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new ColumnsSpec { Height = value });

    [Fact]
    public void PlinthAndTiltCannotBeLeftOut()
    {
        Assert.Throws<ArgumentNullException>(() => new TestObjectSpec { Plinth = null! });
        Assert.Throws<ArgumentNullException>(() => new TestObjectSpec { Tilt = null! });
    }

    [Fact]
    public void TheChamferMustBeLowerThanThePlinth() =>
        Assert.Throws<ArgumentException>(() =>
            new TestObjectSpec
            {
                Plinth = new PlinthSpec { Thickness = 1, EdgeChamfer = 1 },
            }
        );

    [Fact]
    public void NegativeZeroIsZero() => Assert.False(double.IsNegative(new TiltSpec { Angle = -0.0 }.Angle));

    [Theory]
    [InlineData("na\u00EFve", "U+00EF at position 3")]
    [InlineData("12345678901234567890123456789012345678901", "41 characters; at most 40")]
    public void TitlesMustBeDrawable(string title, string message)
    {
        var thrown = Assert.Throws<ArgumentException>(() => new TestObjectSpec { Title = title });
        Assert.Contains(message, thrown.Message, StringComparison.Ordinal);
    }
}
