using CalibGeom.Verification.Maps;
using CalibGeom.Verification.Trends;

namespace CalibGeom.Verification.Tests.Maps;

/// <summary>From what places a map is told, and what it says of them.</summary>
public class MapPlaceTests
{
    private static MapPoint At(string name, double x, double y, double light = 0) =>
        new(
            name,
            x,
            y,
            [
                new GaugeValue(Gauge.Growth, "x", 0.02 + 0.035 * light, 0.002),
                new GaugeValue(Gauge.Growth, "y", 0.01 + 0.035 * light, 0.002),
            ]
        );

    private static string Refused(params MapPoint[] points) =>
        Assert.Throws<InputException>(() => LightMap.Run(points)).Message;

    [Fact]
    public void ACouponOffThePlateIsRefusedByNameAndPlace()
    {
        string said = Refused(At("A1", -55, -30), At("A2", 55, -30), At("B7", 134, -8.5), At("A4", 0, 30));
        Assert.Contains("Coupon B7 stands at X 134, Y -8.5 mm", said, StringComparison.Ordinal);
        Assert.Contains("plate of 150 x 90 mm: X from -75 to 75, Y from -45 to 45", said, StringComparison.Ordinal);
        Assert.Contains("must count from its middle", said, StringComparison.Ordinal);
        Assert.Contains(
            "Coupon A2",
            Refused(At("A1", 0, 0), At("A2", 9, 45.1), At("A3", 9, 3)),
            StringComparison.Ordinal
        );
        // On the very edge it stands on the plate.
        LightMap.Run([At("A1", -75, -45), At("A2", 75, 45), At("A3", 75, -45)]);
    }

    /// <summary>Nothing was read across the line, whatever its direction.</summary>
    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(30, 0, 0)]
    [InlineData(90, 0, 0)]
    [InlineData(30, 1, 0)]
    [InlineData(90, 1, 0)]
    [InlineData(30, 8, 1)]
    [InlineData(90, 8, 1)]
    public void CouponsOnOneLineAreRefused(double degrees, double beside, int mapped)
    {
        double c = Math.Cos(degrees * Math.PI / 180),
            s = Math.Sin(degrees * Math.PI / 180);
        MapPoint[] points =
        [
            .. new[] { (-40.0, 0.0), (0, beside), (40, 0) }.Select(
                (p, i) => At($"A{i + 1}", c * p.Item1 - s * p.Item2, s * p.Item1 + c * p.Item2)
            ),
        ];
        if (mapped == 1)
        {
            LightMap.Run(points);
            return;
        }
        string said = Refused(points);
        Assert.Contains("Coupons A1, A2, A3 stand on one line", said, StringComparison.Ordinal);
        Assert.Contains("less than 5 %", said, StringComparison.Ordinal);
        Assert.Contains("Print coupons beside the line", said, StringComparison.Ordinal);
    }

    /// <summary>Two coupons that share a reading and one that shares none tell no plane.</summary>
    [Fact]
    public void CouponsThatShareTooLittleAreRefused() =>
        Assert.Contains(
            "share too few readings",
            Refused(
                At("A1", -55, -30),
                At("A2", 55, -30),
                new MapPoint("A3", 0, 30, [new GaugeValue(Gauge.PrintThrough, "z", 0.3, 0.01)])
            ),
            StringComparison.Ordinal
        );

    /// <summary>Places of which none lies on the circle of the others: a bowl would pass through all four.</summary>
    [Fact]
    public void ABowlNeedsFivePlaces()
    {
        (double X, double Y)[] places = [(-55, -30), (55, -30), (0, 5), (-20, 40), (50, 38)];
        double Light(double x, double y) => -(x * x + y * y) / 4000;
        MapPoint[] all = [.. places.Select((p, i) => At($"A{i}", p.X, p.Y, Light(p.X, p.Y)))];
        MapResult four = LightMap.Run(all[..4]);
        Assert.Null(four.Bowl);
        Assert.NotEqual(SurfaceShape.Bowl, four.Shape);
        Assert.NotNull(LightMap.Run(all).Bowl);
    }

    /// <summary>That no difference is seen does not make the light known.</summary>
    [Fact]
    public void AnEvenMapKeepsWhatCouldHide()
    {
        MapResult map = LightMap.Run([.. MapShop.Places(5).Select((p, i) => At($"A{i}", p.X, p.Y))]);
        Assert.False(map.Differs);
        Assert.Equal(SurfaceShape.Even, map.Shape);
        Amount corner = map.LightAt(75, 45),
            clearance = map.ClearanceChangeAt(75, 45);
        Assert.Equal((0, 0), (corner.Value, clearance.Value));
        Assert.True(corner.High > 0.02 && corner.Low < -0.02);
        Assert.Equal(2 * 0.035 * corner.High, clearance.High, 1e-12);
        Assert.All(map.Places, p => Assert.Equal(map.LightAt(p.Point.X, p.Point.Y), p.Fitted));
        Amount there = JointOverPlate.Of(map, 20, 20.2, 75, 45).Clearance,
            middle = JointOverPlate.Of(map, 20, 20.2, 0, 0).Clearance;
        Assert.Equal(middle.Value, there.Value, 1e-12);
        Assert.True(there.High - there.Low > 1.2 * (middle.High - middle.Low));
    }

    /// <summary>The shape that is said is the one the places are fitted by, also where chance made a slope.</summary>
    [Fact]
    public void FittedLightIsOfTheShapeSaid()
    {
        MapResult map = LightMap.Run([.. MapShop.Places(5).Select((p, i) => At($"A{i}", p.X, p.Y, 0.0002 * p.X))]);
        Assert.Equal(SurfaceShape.Even, map.Shape);
        Assert.All(map.Places, p => Assert.Equal(0, p.Fitted.Value));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-2.5)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void ImpossibleNumbersAreRefused(double bad)
    {
        MapPoint point = At("A1", 0, 0);
        Assert.Throws<ArgumentException>(() => point with { Thickness = bad });
        Assert.Throws<ArgumentException>(() => point with { ThicknessUncertainty = bad });
        Assert.Null((point with { Thickness = null }).Thickness);
        MapResult map = LightMap.Run([At("A1", -55, -30), At("A2", 55, -30), At("A3", 0, 30)]);
        Assert.Equal("peg", Assert.Throws<ArgumentException>(() => JointOverPlate.Of(map, bad, 20)).ParamName);
        Assert.Equal("hole", Assert.Throws<ArgumentException>(() => JointOverPlate.Of(map, 20, bad)).ParamName);
    }

    [Fact]
    public void HalfAPlaceIsRefused()
    {
        MapResult map = LightMap.Run([At("A1", -55, -30), At("A2", 55, -30), At("A3", 0, 30)]);
        Assert.Equal("y", Assert.Throws<ArgumentException>(() => JointOverPlate.Of(map, 20, 20.2, 5)).ParamName);
        Assert.Equal("x", Assert.Throws<ArgumentException>(() => JointOverPlate.Of(map, 20, 20.2, y: 5)).ParamName);
        Assert.Throws<ArgumentException>(() => JointOverPlate.Of(map, 20, 20.2, double.NaN, 5));
        Assert.Throws<ArgumentException>(() => JointOverPlate.Of(map, 20, 20.2, 5, double.NaN));
    }

    /// <summary>A fit that was felt is a range; the sentence speaks of calipers.</summary>
    [Fact]
    public void AFeltFitTellsNoClearance()
    {
        MapPoint Felt(string name, double x, double y) =>
            new(name, x, y, [new GaugeValue(Gauge.Growth, "felt|joint", 0.02, 0.01) { Felt = true }]);
        MapResult map = LightMap.Run([Felt("A1", -55, -30), Felt("A2", 55, -30), Felt("A3", 0, 30)]);
        Assert.Contains(
            "measured by caliper",
            Assert.Throws<InputException>(() => JointOverPlate.Of(map, 20, 20.2)).Message,
            StringComparison.Ordinal
        );
        MapResult some = LightMap.Run([
            .. map.Places.Select(p => p.Point),
            At("B1", -20, 30),
            At("B2", 20, 30),
            At("B3", 0, -30),
        ]);
        Assert.Equal(0.1 - 2 * 0.015, JointOverPlate.Of(some, 20, 20.2).Clearance.Value, 1e-9);
    }
}
