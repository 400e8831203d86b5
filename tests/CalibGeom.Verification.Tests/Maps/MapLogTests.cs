using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Maps;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Trends;

namespace CalibGeom.Verification.Tests.Maps;

/// <summary>From trials to coupons of a map.</summary>
public class MapLogTests
{
    /// <summary>A joint printed at the same settings keeps the edge offset, so growth is taken with it.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(-0.02)]
    [InlineData(0.015)]
    public void GrowthHoldsTheEdgeOffsetOfThePrint(double offset)
    {
        MapPoint point = Assert.Single(
            MapLog.Points([
                new Trial(new ExposureSettings(2.5, 1, offset), new TrialConditions(0.05))
                {
                    Place = new PlateSpot("A1", 10, 20),
                    GrowthX = new GrowthReading(0.03, 0.002, 0.01),
                    GrowthY = new GrowthReading(0.01, 0.002, 0.01),
                },
            ])
        );
        Assert.Equal([0.03, 0.01], point.Values.Select(v => v.Value));
    }

    [Fact]
    public void AFeltFitHoldsItToo()
    {
        MapPoint Of(double offset) =>
            MapLog
                .Points([
                    new Trial(new ExposureSettings(2.5, 1, offset), new TrialConditions(0.05))
                    {
                        Place = new PlateSpot("A1", 10, 20),
                        Joints = [new JointOutcome("fit1", 0.1, FeltFit.Slides, 0.1)],
                    },
                ])
                .Single();
        GaugeValue value = Assert.Single(Of(-0.02).Values);
        Assert.Equal(Assert.Single(Of(0).Values).Value, value.Value);
        Assert.Equal(Gauge.Growth, value.Gauge);
    }

    /// <summary>A log may have been written by hand.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(-1.5)]
    [InlineData(1001)]
    public void AThicknessThatIsNoneIsRefusedByItsCoupon(double mm)
    {
        Trial Of(double thickness) =>
            new(new ExposureSettings(2.5, 1), new TrialConditions(0.05))
            {
                Place = new PlateSpot("A1", 10, 20),
                Readings = new Dictionary<string, IReadOnlyList<double>> { ["plinth.thickness"] = [1.5, thickness] },
            };
        Assert.Equal(1.75, Assert.Single(MapLog.Points([Of(2)])).Thickness);
        InputException refused = Assert.Throws<InputException>(() => MapLog.Points([Of(mm)]));
        Assert.Contains(
            FormattableString.Invariant($"Coupon A1: a reading of plinth.thickness is {mm} mm"),
            refused.Message,
            StringComparison.Ordinal
        );
    }
}
