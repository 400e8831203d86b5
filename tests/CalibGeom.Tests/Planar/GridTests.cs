using CalibGeom.Planar;

namespace CalibGeom.Tests.Planar;

public class GridTests
{
    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1024.01)]
    [InlineData(-1025)]
    public void RefusesWhatIsNoCoordinate(double millimetres) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Grid.FromMillimetres(millimetres));
}
