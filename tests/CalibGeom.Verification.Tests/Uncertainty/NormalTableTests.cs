using CalibGeom.Verification.Uncertainty;
using FsCheck.Xunit;
using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Tests.Uncertainty;

public class NormalTableTests
{
    [Property]
    public void TheTableIsTheNormalTableEverywhere(int mean, uint deviation, int value)
    {
        double m = mean / 1000.0,
            d = (deviation + 1) / 700.0,
            x = m + d * (value % 9973) / 997.0;
        Assert.Equal(Normal.CDF(m, d, x), NormalTable.Below(m, d, x), 1e-11);
    }

    [Fact]
    public void FarAwayIsNothingOrAll()
    {
        Assert.Equal(0, NormalTable.Below(1, 2, double.NegativeInfinity));
        Assert.Equal(1, NormalTable.Below(1, 2, double.PositiveInfinity));
        Assert.Equal(0, NormalTable.Below(0, 1, -9));
        Assert.Equal(1, NormalTable.Below(0, 1, 9));
        // Every cell of the table and its joints: between -8.5 and 8.5 nothing falls.
        double before = 0;
        for (int i = -8600; i <= 8600; i++)
        {
            double here = NormalTable.Below(0, 1, i / 1000.0);
            Assert.Equal(Normal.CDF(0, 1, i / 1000.0), here, 1e-11);
            Assert.True(here >= before - 1e-15);
            before = here;
        }
    }
}
