using CalibGeom.Verification.Maps;
using CalibGeom.Verification.Trends;

namespace CalibGeom.Verification.Tests.Maps;

/// <summary>What a map says of coupons that do not fit together.</summary>
public class MapDoubtsTests
{
    private static MapResult Plate(Func<int, string> caliper, Func<int, double> through) =>
        LightMap.Run([
            .. MapShop
                .Places(5)
                .Select(
                    (p, i) =>
                        new MapPoint(
                            $"A{i + 1}",
                            p.X,
                            p.Y,
                            [
                                new GaugeValue(Gauge.Growth, $"x|{caliper(i)}|", 0.02, 0.0025),
                                new GaugeValue(Gauge.Growth, $"y|{caliper(i)}|", 0.02, 0.0025),
                                new GaugeValue(Gauge.PrintThrough, $"bridge|{caliper(i)}|", through(i), 0.010),
                            ]
                        )
                ),
        ]);

    [Fact]
    public void SeveralCalipersAreSaidAndNoPlateIsCalledEvenByThem()
    {
        IReadOnlyList<Finding> one = MapWords.Check(Plate(_ => "a", _ => 0.2)),
            two = MapWords.Check(Plate(i => i % 2 == 0 ? "a" : "b", _ => 0.2));
        Assert.DoesNotContain(one, f => f.Rule == "map-calipers");
        Assert.Equal("Keep one exposure for the whole plate.", one.Single(f => f.Rule == "map-even").Remedy);
        Assert.Single(two, f => f.Rule == "map-calipers");
        Assert.StartsWith("Read all coupons with one caliper", two.Single(f => f.Rule == "map-even").Remedy);
    }

    [Theory]
    [InlineData(0.34, false)]
    [InlineData(0.36, true)]
    [InlineData(0.04, true)]
    public void ABridgeFarFromAllOthersIsNamed(double odd, bool named)
    {
        IEnumerable<Finding> said = MapWords
            .Check(Plate(_ => "a", i => i == 2 ? odd : 0.2))
            .Where(f => f.Rule == "map-outlier");
        Assert.Equal(named ? ["A3"] : [], said.Select(f => f.Subject));
    }
}
