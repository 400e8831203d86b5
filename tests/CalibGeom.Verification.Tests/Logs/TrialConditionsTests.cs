using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tests.Logs;

public class TrialConditionsTests
{
    [Theory]
    [InlineData(24.0, 26.0, 25.0)]
    [InlineData(24.0, null, 24.0)]
    [InlineData(null, 26.0, 26.0)]
    [InlineData(null, null, null)]
    public void TheVatIsAsWarmAsWhatWasRead(double? start, double? end, double? mean) =>
        Assert.Equal(
            mean,
            new TrialConditions(0.05, "Demo grey", "bench", temperatureStart: start, temperatureEnd: end).Temperature
        );
}
