using CalibGeom.Verification.Clearances;

namespace CalibGeom.Verification.Tests.Clearances;

public class BracketTests
{
    // A rectangle of half width a has the standard uncertainty a / sqrt(3) (JCGM 100, 4.3.7).
    [Theory]
    [InlineData(0.2, 0.26, 0.23, 0.03)]
    [InlineData(0.2, double.PositiveInfinity, 0.2, double.PositiveInfinity)]
    public void ALengthBetweenTwoLimitsIsARectangle(double low, double high, double value, double half)
    {
        var bracket = new Bracket(low, high);
        Assert.Equal(value, bracket.Value, 1e-12);
        Assert.Equal(half / Math.Sqrt(3), bracket.StandardUncertainty, 1e-12);
    }
}
