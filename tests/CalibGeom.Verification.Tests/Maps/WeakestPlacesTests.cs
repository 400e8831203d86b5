using CalibGeom.Verification.Maps;
using CalibGeom.Verification.Trends;

namespace CalibGeom.Verification.Tests.Maps;

/// <summary>Which places are named as the weakest, and in what words.</summary>
public class WeakestPlacesTests
{
    private static MapResult Exact(Func<double, double, double> light, int coupons = 9) =>
        LightMap.Run(MapShop.Exact(coupons, light, 0.0005));

    private static string Said(MapResult map) => MapWords.Check(map).Single(f => f.Rule == "map-weakest").Message;

    [Theory]
    [InlineData(0.002, 0.003, -75, -45, "front left")]
    [InlineData(-0.002, 0.003, 75, -45, "front right")]
    [InlineData(-0.002, -0.003, 75, 45, "back right")]
    [InlineData(0.002, -0.003, -75, 45, "back left")]
    public void AnExactPlaneHasOneWeakestCorner(double alongX, double alongY, double x, double y, string corner)
    {
        MapResult map = Exact((px, py) => alongX * px + alongY * py);
        WeakPlace place = Assert.Single(map.WeakestPlaces);
        Assert.Equal((x, y), (place.X, place.Y));
        Assert.Equal(1, place.Probability, 0.001);
        Assert.Equal(1 - Math.Exp(-0.57), place.Lacks.Value, 1e-9);
        Assert.InRange(place.Lacks.Value, place.Lacks.Low, place.Lacks.High);
        Assert.StartsWith($"Weakest at the corner {corner}: 43 % (", Said(map), StringComparison.Ordinal);
        Assert.EndsWith(
            "neither another corner nor the middle is weaker with probability 1.00.",
            Said(map),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(0.002, 0, "left")]
    [InlineData(-0.002, 0, "right")]
    [InlineData(0, 0.003, "front")]
    [InlineData(0, -0.003, "back")]
    public void APlaneAlongOneEdgeHasTheTwoCornersOfASide(double alongX, double alongY, string side)
    {
        MapResult map = Exact((x, y) => alongX * x + alongY * y);
        Assert.Equal(2, map.WeakestPlaces.Count);
        Assert.All(map.WeakestPlaces, p => Assert.True(alongX * p.X + alongY * p.Y < 0));
        Assert.All(map.WeakestPlaces, p => Assert.InRange(p.Probability, 0.45, 0.55));
        Assert.True(map.WeakestPlaces[0].Probability >= map.WeakestPlaces[1].Probability);
        Assert.StartsWith($"Weakest on the {side} side: at the corner ", Said(map), StringComparison.Ordinal);
    }

    [Fact]
    public void ARoundDomeHasItsFourCorners()
    {
        MapResult map = Exact((x, y) => -(x * x + y * y) / 20000);
        Assert.Equal(4, map.WeakestPlaces.Count);
        Assert.DoesNotContain(map.WeakestPlaces, p => (p.X, p.Y) == (0, 0));
        Assert.StartsWith("Weakest at one of: the corner ", Said(map), StringComparison.Ordinal);
    }

    /// <summary>Every second coupon is darker: neither plane nor bowl says where it is weakest.</summary>
    [Fact]
    public void LightOfNoShapeIsWeakestNobodyKnowsWhere()
    {
        MapResult map = Exact((x, y) => (int)(x / 55 + y / 30) % 2 == 0 ? 0 : -0.1);
        Assert.True(map.Differs);
        Assert.Equal(5, map.WeakestPlaces.Count);
        Assert.StartsWith("Where it is weakest cannot be told", Said(map), StringComparison.Ordinal);
    }

    /// <summary>Nothing was read inside, so a small difference between corners leaves the middle open.</summary>
    [Fact]
    public void FourCouponsDoNotRuleOutTheMiddle()
    {
        double Light(double x, double y) => 0.0004 * x + 0.0007 * y;
        Assert.Contains(Exact(Light, 4).WeakestPlaces, p => (p.X, p.Y) == (0, 0));
        Assert.DoesNotContain(Exact(Light).WeakestPlaces, p => (p.X, p.Y) == (0, 0));
    }

    [Fact]
    public void NothingIsNamedWhereNothingIsClaimed() => Assert.Empty(Exact((_, _) => 0).WeakestPlaces);

    [Fact]
    public void Words()
    {
        WeakPlace Of(double x, double y, double probability) => new(x, y, probability, new Amount(0.2, -0.01, 0.3));
        WeakPlace right = Of(75, -45, 0.55),
            back = Of(75, 45, 0.42),
            left = Of(-75, 45, 0.3),
            front = Of(-75, -45, 0.1),
            middle = Of(0, 0, 0.35);
        const string below = "20 % (0 to 30) below the brightest place";
        Assert.Equal(
            $"Weakest at the corner front right: {below}; neither another corner nor the middle is weaker with probability 0.95.",
            WeakestWords.Of([right with { Probability = 0.95 }])
        );
        Assert.Equal(
            $"Weakest in the middle: {below}; no corner is weaker with probability 0.95.",
            WeakestWords.Of([middle with { Probability = 0.95 }])
        );
        Assert.Equal(
            $"Weakest on the right side: at the corner front right (0.55) or back right (0.42), the first {below}.",
            WeakestWords.Of([right, back])
        );
        Assert.Equal(
            $"Weakest at one of: the corner front right (0.55), the corner back left (0.30); the first is {below}.",
            WeakestWords.Of([right, left])
        );
        Assert.Equal(
            $"Weakest at one of: the corner back right (0.42), the middle (0.35); the first is {below}.",
            WeakestWords.Of([back, middle])
        );
        Assert.Equal(
            "Where it is weakest cannot be told from these coupons: at any corner or in the middle.",
            WeakestWords.Of([right, back, left, middle, front])
        );
    }
}
