using CalibGeom.Planar;

namespace CalibGeom.Tests.Planar;

public class OutlineTests
{
    public static TheoryData<string, Vector2D[]> Refused =>
        new()
        {
            { "at least 3", [(0, 0), (1, 0)] },
            { "repeats", [(0, 0), (1, 0), (1, 0), (1, 1)] },
            { "repeats", [(0, 0), (1, 0), (1, 1), (0, 0)] },
            { "touches or crosses", [(0, 0), (2, 2), (2, 0), (0, 2)] },
            { "touches or crosses", [(0, 0), (4, 0), (4, 4), (2, 0), (0, 4)] },
            { "touches or crosses", [(0, 0), (4, 0), (2, 0)] },
            { "touches or crosses", [(0, 0), (4, 0), (4, 4), (4, 1), (0, 4)] },
        };

    [Theory]
    [MemberData(nameof(Refused))]
    public void RefusesWhatIsNotSimple(string message, Vector2D[] points)
    {
        var error = Assert.Throws<ArgumentException>(() => Outline.FromMillimetres(points));
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(double.NaN, 0)]
    [InlineData(0, double.NegativeInfinity)]
    [InlineData(1024.2, 0)]
    public void RefusesWhatIsNotOnTheGrid(double x, double y) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Outline.FromMillimetres((0, 0), (1, 0), (x, y)));

    [Fact]
    public void ClockwiseIsTurnedRoundAndKeepsItsFirstVertex()
    {
        Outline outline = Outline.FromMillimetres((1, 1), (1, 2), (2, 2));
        Assert.Equal(GridPoint.FromMillimetres(1, 1), outline.Points[0]);
        Assert.Equal(GridPoint.FromMillimetres(2, 2), outline.Points[1]);
        Assert.Equal(0.5, outline.Area, 1e-12);
    }

    [Theory]
    [InlineData(0.25)]
    [InlineData(0.8)]
    [InlineData(1.6)]
    [InlineData(40)]
    public void ACircleHasTheAreaOfItsDiameterAndShortChords(double diameter)
    {
        // CHECKS.md section 11, regular polygons: equal-area circumradius factor sqrt(2 pi / (n sin(2 pi / n))),
        // sagitta 1 - cos(pi / n).
        Outline circle = Outline.Circle(3, 4, diameter);
        Assert.Equal(0, circle.Count % 4);
        Assert.Equal(diameter, 2 * Math.Sqrt(circle.Area / Math.PI), 0.5 / Grid.UnitsPerMillimetre);
        Assert.True(diameter / 2 * (1 - Math.Cos(Math.PI / circle.Count)) <= Outline.ChordTolerance);
    }

    [Fact]
    public void HolesMustLieApartInside()
    {
        Outline outer = Outline.Rectangle(0, 0, 9, 9);
        Assert.Throws<ArgumentException>(() => new Region(outer, Outline.Rectangle(10, 10, 11, 11)));
        Assert.Throws<ArgumentException>(() => new Region(outer, Outline.Rectangle(0, 1, 2, 2)));
        Assert.Throws<ArgumentException>(() =>
            new Region(outer, Outline.Rectangle(1, 1, 3, 3), Outline.Rectangle(2, 2, 4, 4))
        );
        Assert.Throws<ArgumentException>(() =>
            new Region(outer, Outline.Rectangle(1, 1, 5, 5), Outline.Rectangle(2, 2, 3, 3))
        );
        Assert.Equal(77, new Region(outer, Outline.Rectangle(1, 1, 3, 3)).Area, 1e-12);
    }

    [Fact]
    public void LoftEndsMustFit()
    {
        Outline four = Outline.Rectangle(0, 0, 1, 1),
            three = Outline.FromMillimetres((0, 0), (1, 0), (0, 1));
        Assert.Throws<ArgumentException>(() => new CalibGeom.Solids.Loft(four, 0, three, 1));
        Assert.Throws<ArgumentException>(() => CalibGeom.Solids.Loft.Prism(four, 1, 1));
        Assert.Throws<ArgumentException>(() => CalibGeom.Solids.Loft.Prism(four, 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => CalibGeom.Solids.Loft.Prism(four, 0, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => CalibGeom.Solids.Loft.Prism(four, 0, 1025));
    }
}
