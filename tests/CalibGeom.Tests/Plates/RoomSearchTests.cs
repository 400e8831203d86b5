using CalibGeom.Meshes;
using CalibGeom.Plates;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static CalibGeom.Tests.Plates.Shapes;

namespace CalibGeom.Tests.Plates;

/// <summary>The search held against all places there are, with distances of rectangles counted another way.</summary>
public class RoomSearchTests
{
    private static readonly PerAxis Pitch = new(1.25, 0.75);
    private static readonly Plate Plate = new(34, 25, margin: 1);

    /// <summary>Obstacles that leave little room, a coupon of one or two rectangles, what it aims at.</summary>
    public sealed record Crowd(
        Side4[] Obstacles,
        Side4[] Coupon,
        (double X, double Y)[] Targets,
        double Gap,
        double Weight
    );

    /// <summary>A rectangle.</summary>
    public readonly record struct Side4(double X0, double Y0, double X1, double Y1)
    {
        internal Side4 Move(double x, double y) => new(X0 + x, Y0 + y, X1 + x, Y1 + y);

        internal Side4 Turned => new(-Y1, X0, -Y0, X1);

        internal double DistanceTo(Side4 o) =>
            double.Hypot(Math.Max(0, Math.Max(X0 - o.X1, o.X0 - X1)), Math.Max(0, Math.Max(Y0 - o.Y1, o.Y0 - Y1)));
    }

    public static Arbitrary<Crowd> Crowds() =>
        (
            from many in Gen.Choose(0, 5)
            from obstacles in Rectangle(-20, 20, 2, 12).ArrayOf(many)
            from parts in Gen.Choose(1, 2)
            from coupon in Rectangle(-4, 4, 3, 9).ArrayOf(parts)
            from count in Gen.Choose(1, 3)
            from targets in Point().ArrayOf(count)
            from gap in Gen.Elements(0.5, 1, 2.125)
            from weight in Gen.Elements(0, 0.001, 0.5)
            select new Crowd(obstacles, coupon, targets, gap, many == 0 ? 0 : weight)
        ).ToArbitrary();

    private static Gen<(double, double)> Point() =>
        from x in Gen.Choose(-200, 200)
        from y in Gen.Choose(-150, 150)
        select (x / 10.0, y / 10.0);

    private static Gen<Side4> Rectangle(int low, int high, int least, int most) =>
        from x in Gen.Choose(8 * low, 8 * high)
        from y in Gen.Choose(8 * low, 8 * high)
        from w in Gen.Choose(8 * least, 8 * most)
        from d in Gen.Choose(8 * least, 8 * most)
        select new Side4(x / 8.0, y / 8.0, (x + w) / 8.0, (y + d) / 8.0);

    [Property(MaxTest = 150, Arbitrary = [typeof(RoomSearchTests)])]
    public void NoFreePlaceIsBetterThanTheOneFound(Crowd crowd)
    {
        Footprint[] turns = Footprint.BothTurns(
            TriangleMesh.Join([.. crowd.Coupon.Select(r => Box(r.X0, r.Y0, 0, r.X1, r.Y1, 5))])
        );
        var goal = new RoomGoal(_ => crowd.Targets, crowd.Weight, 1e-4);
        PlanarTriangles[] obstacles = [.. crowd.Obstacles.Select(o => new PlanarTriangles(Flat(o)))];
        RoomSpot? found = new RoomSearch(Plate, obstacles, crowd.Gap, Pitch).Find(turns, goal);
        double best = double.PositiveInfinity;
        for (int turn = 0; turn < 2; turn++)
        for (int column = -40; column <= 40; column++)
        for (int row = -40; row <= 40; row++)
            best = Math.Min(best, Cost(crowd, turn, column * Pitch.X, row * Pitch.Y));
        if (found is null)
        {
            Assert.Equal(double.PositiveInfinity, best);
            return;
        }
        Assert.Equal(Math.Round(found.X / Pitch.X), found.X / Pitch.X, 1e-3);
        Assert.Equal(Math.Round(found.Y / Pitch.Y), found.Y / Pitch.Y, 1e-3);
        double cost = Cost(crowd, found.Footprint.Turn == 0 ? 0 : 1, found.X, found.Y);
        Assert.True(cost <= best + goal.Tolerance + 1e-9, $"{cost} where {best} is free: {found.X} {found.Y}");
    }

    /// <summary>Endless where the coupon does not fit; by the turn alone an unturned one is preferred.</summary>
    private static double Cost(Crowd crowd, int turn, double x, double y)
    {
        Side4[] coupon = [.. crowd.Coupon.Select(r => (turn == 0 ? r : r.Turned).Move(x, y))];
        var bounds = new Side4(
            coupon.Min(r => r.X0),
            coupon.Min(r => r.Y0),
            coupon.Max(r => r.X1),
            coupon.Max(r => r.Y1)
        );
        double inset = Plate.Margin + crowd.Gap - 1e-6;
        if (bounds.X0 < -17 + inset || bounds.X1 > 17 - inset || bounds.Y0 < -12.5 + inset || bounds.Y1 > 12.5 - inset)
            return double.PositiveInfinity;
        double distance = crowd.Obstacles.SelectMany(o => coupon.Select(o.DistanceTo)).Append(1e4).Min();
        if (distance < crowd.Gap - 1e-6)
            return double.PositiveInfinity;
        double middleX = (bounds.X0 + bounds.X1) / 2,
            middleY = (bounds.Y0 + bounds.Y1) / 2;
        return crowd.Targets.Select((t, i) => double.Hypot(t.X - middleX, t.Y - middleY) + i * 1e-6).Min()
            + crowd.Weight * (distance - crowd.Gap)
            + turn * 1e-5;
    }

    private static double[] Flat(Side4 r) => [r.X0, r.Y0, r.X1, r.Y0, r.X1, r.Y1, r.X0, r.Y0, r.X1, r.Y1, r.X0, r.Y1];

    [Fact]
    public void OfPlacesAsGoodTheUnturnedAndTheFirstTargetWin()
    {
        Footprint[] turns = Footprint.BothTurns(Box(-2, -2, 0, 2, 2, 5));
        var goal = new RoomGoal(_ => [(5, 0), (-5, 0)], 0, 1e-7);
        RoomSpot spot = new RoomSearch(Plate, [], 1, new PerAxis(1, 1)).Find(turns, goal)!;
        Assert.Equal((5, 0, 0), (spot.X, spot.Y, spot.Footprint.Turn));
        RoomSpot turned = new RoomSearch(Plate, [], 1, new PerAxis(1, 1)).Find([turns[1]], goal)!;
        Assert.Equal((5, 0, 90), (turned.X, turned.Y, turned.Footprint.Turn));
    }
}
