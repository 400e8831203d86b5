using CalibGeom.Planar;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Planar;

public class TurnedBoxTests
{
    public static Arbitrary<(GridPoint A, GridPoint B)[]> Bundles() =>
        (
            from n in Gen.Choose(1, 5)
            from size in Gen.Elements(20, 1000, 100_000)
            from c in Gen.Choose(-size, size).ArrayOf(4 * n)
            select Enumerable
                .Range(0, n)
                .Select(i => (new GridPoint(c[4 * i], c[4 * i + 1]), new GridPoint(c[4 * i + 2], c[4 * i + 3])))
                .ToArray()
        ).ToArbitrary();

    /// <summary>Points of the segments that are a unit apart or less are never told apart by their boxes.</summary>
    [Property(MaxTest = 300, Arbitrary = [typeof(TurnedBoxTests)])]
    public void WhatComesNearMeets(
        (GridPoint A, GridPoint B)[] one,
        (GridPoint A, GridPoint B)[] other,
        byte along,
        byte beside
    )
    {
        // The other bundle is moved until a point of its first segment lies on a point of ours.
        (double x, double y) = At(one[^1], along / 255.0);
        (double u, double v) = At(other[0], beside / 255.0);
        (int dx, int dy) = ((int)Math.Round(x - u), (int)Math.Round(y - v));
        (GridPoint, GridPoint)[] moved =
        [
            .. other.Select(s => (new GridPoint(s.A.X + dx, s.A.Y + dy), new GridPoint(s.B.X + dx, s.B.Y + dy))),
        ];
        TurnedBox a = TurnedBox.Round(one),
            b = TurnedBox.Round(moved);
        Assert.True(a.Meets(b) && b.Meets(a));
        // Boxes round boxes hold what those hold.
        TurnedBox far = TurnedBox.Round([(new GridPoint(900_000, 10), new GridPoint(900_100, 400))]);
        Assert.True(TurnedBox.Round(a, far).Meets(b) && TurnedBox.Round(far, a).Meets(b));
        Assert.True(b.Meets(TurnedBox.Round(a, far)) && b.Meets(TurnedBox.Round(far, a)));
    }

    /// <summary>Turned to what they hold: long segments side by side do not meet a few units apart.</summary>
    [Theory]
    [InlineData(1000, 0)]
    [InlineData(0, 1000)]
    [InlineData(1000, 1000)]
    [InlineData(-1000, 400)]
    [InlineData(300, -1000)]
    public void LongOnesSideBySideAreToldApart(int x, int y)
    {
        double size = Math.Sqrt((double)x * x + (double)y * y);
        foreach (int away in new[] { 5, -5, 40, -40 })
        {
            int dx = (int)Math.Round(-y / size * away),
                dy = (int)Math.Round(x / size * away);
            TurnedBox here = Of(0, 0, x, y),
                there = Of(dx, dy, x + dx, y + dy),
                back = Of(x + dx, y + dy, dx, dy);
            Assert.False(here.Meets(there) || there.Meets(here) || here.Meets(back));
            // Two that run on in one line are as thin, whichever way each was drawn.
            TurnedBox longer = TurnedBox.Round(here, Of(2 * x, 2 * y, x, y));
            Assert.False(longer.Meets(there) || longer.Meets(back) || there.Meets(longer));
            TurnedBox pair = TurnedBox.Round([
                (new GridPoint(0, 0), new GridPoint(x, y)),
                (new GridPoint(2 * x, 2 * y), new GridPoint(x, y)),
            ]);
            Assert.False(pair.Meets(there) || there.Meets(pair));
        }
        // And one behind the other.
        Assert.False(Of(0, 0, x, y).Meets(Of(x + Math.Sign(x) * 4, y + Math.Sign(y) * 4, 2 * x, 2 * y)));
    }

    [Fact]
    public void APointHasABoxToo()
    {
        TurnedBox point = Of(7, 7, 7, 7);
        Assert.True(point.Meets(Of(8, 7, 8, 7)));
        Assert.False(point.Meets(Of(10, 7, 10, 7)));
        Assert.False(point.Meets(Of(7, 10, 7, 10)));
    }

    private static TurnedBox Of(int ax, int ay, int bx, int by) =>
        TurnedBox.Round([(new GridPoint(ax, ay), new GridPoint(bx, by))]);

    private static (double X, double Y) At((GridPoint A, GridPoint B) s, double share) =>
        (s.A.X + share * ((double)s.B.X - s.A.X), s.A.Y + share * ((double)s.B.Y - s.A.Y));
}
