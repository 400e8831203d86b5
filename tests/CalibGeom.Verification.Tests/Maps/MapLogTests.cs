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
}
