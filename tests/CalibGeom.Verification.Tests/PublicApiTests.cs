namespace CalibGeom.Verification.Tests;

public class PublicApiTests
{
    [Fact]
    public void ThePublicSurfaceIsTheOneInTheFile() =>
        PublicApi.RequireUnchanged(
            typeof(CalibGeom.Verification.Readings.Reading).Assembly,
            "tests/CalibGeom.Verification.Tests/PublicApi.txt"
        );
}
