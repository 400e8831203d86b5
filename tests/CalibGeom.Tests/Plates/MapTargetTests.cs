using CalibGeom.Plates;
using static CalibGeom.Tests.Plates.Shapes;

namespace CalibGeom.Tests.Plates;

public class MapTargetTests
{
    private static readonly Plate Plate = new(110, 70, margin: 5);

    [Fact]
    public void FewGoToOppositeCornersAndTheMiddle()
    {
        Assert.Equal([(0.0, 0.0)], MapTargets.Spread(Plate, 1));
        Assert.Equal([(-50.0, -30.0), (50, 30)], MapTargets.Spread(Plate, 2));
        Assert.Equal([(-50.0, -30.0), (50, 30), (0, 0)], MapTargets.Spread(Plate, 3));
        Assert.Equal([(-50.0, -30.0), (50, -30), (-50, 30), (50, 30)], MapTargets.Spread(Plate, 4));
    }

    /// <summary>Each after the fifth is as far from those before as any place of a lattice over the plate.</summary>
    [Fact]
    public void MoreGoWhereTheOthersAreFurthest()
    {
        IReadOnlyList<(double X, double Y)> all = MapTargets.Spread(Plate, 12);
        Assert.Equal(12, all.Count);
        Assert.Equal((0, 0), all[4]);
        for (int i = 5; i < all.Count; i++)
        {
            Assert.Equal(all.Take(i), MapTargets.Spread(Plate, i));
            double furthest = 0;
            for (int column = 0; column <= 32; column++)
            for (int row = 0; row <= 32; row++)
                furthest = Math.Max(furthest, Nearest(-50 + 100 * column / 32.0, -30 + 60 * row / 32.0, i));
            Assert.Equal(furthest, Nearest(all[i].X, all[i].Y, i), 1e-6);
        }

        double Nearest(double x, double y, int before) => all.Take(before).Min(p => double.Hypot(p.X - x, p.Y - y));
    }

    [Fact]
    public void InACornerACouponKeepsMarginAndGap()
    {
        Footprint footprint = Footprint.BothTurns(Box(-10, -4, 0, 10, 4, 5))[0];
        Assert.Equal([(-38.0, -24.0), (38, -24), (-38, 24), (38, 24)], MapTargets.Corners(Plate, 2, footprint));
    }

    [Fact]
    public void RowsAreTriedFromTwoSidesAndInTurnsOfEachSize()
    {
        Footprint[] small = Footprint.BothTurns(Box(-10, -4, 0, 10, 4, 5)),
            large = Footprint.BothTurns(Box(-12, -4, 0, 12, 4, 5));
        (RoomGoal Goal, Footprint[][] Turns)[] ways = [.. MapRows.Of(Plate, [small, large, small])];
        // From two sides: as they like, and every choice of a turn for two sizes.
        Assert.Equal(2 * (1 + 4), ways.Length);
        Assert.All(ways[0].Turns.Concat(ways[5].Turns), turns => Assert.Equal(2, turns.Length));
        foreach (int first in new[] { 1, 6 })
        {
            (int, int, int)[] turned =
            [
                .. ways.Skip(first)
                    .Take(4)
                    .Select(w => (w.Turns[0].Single().Turn, w.Turns[1].Single().Turn, w.Turns[2].Single().Turn)),
            ];
            Assert.Equal([(0, 0, 0), (0, 90, 0), (90, 0, 90), (90, 90, 90)], turned.Order());
        }
        // The first fills rows along x from the front, the second columns along y from the left.
        (double x, double y) = Assert.Single(ways[0].Goal.Targets(small[0]));
        Assert.True(y < x && x < Plate.MinX);
        (x, y) = Assert.Single(ways[5].Goal.Targets(small[0]));
        Assert.True(x < y && y < Plate.MinY);
    }

    [Fact]
    public void WhatMayNotBeTurnedIsTriedAsItStands()
    {
        Footprint[] one = [Footprint.BothTurns(Box(-10, -4, 0, 10, 4, 5))[0]],
            both = Footprint.BothTurns(Box(-9, -4, 0, 9, 4, 5));
        Assert.Equal(2, MapRows.Of(Plate, [one, one]).Count());
        Assert.Equal(2, MapRows.Of(Plate, [both, one]).Count());
    }

    /// <summary>Of four sizes all are turned alike.</summary>
    [Fact]
    public void OfManySizesAllAreTurnedAlike()
    {
        Footprint[][] four =
        [
            .. Enumerable.Range(0, 4).Select(i => Footprint.BothTurns(Box(-10 - i, -4, 0, 10 + i, 4, 5))),
        ];
        (RoomGoal, Footprint[][] Turns)[] ways = [.. MapRows.Of(Plate, four)];
        Assert.Equal(2 * (1 + 2), ways.Length);
        Assert.All(ways[1].Turns, t => Assert.Equal(0, t.Single().Turn));
        Assert.All(ways[2].Turns, t => Assert.Equal(90, t.Single().Turn));
        Assert.Equal(2 * (1 + 8), MapRows.Of(Plate, four[..3]).Count());
    }
}
