namespace CalibGeom.Pictures.Tests;

public class PublicApiTests
{
    [Fact]
    public void ThePublicSurfaceIsTheOneInTheFile() =>
        PublicApi.RequireUnchanged(
            typeof(CalibGeom.Pictures.Drawings.Drawing).Assembly,
            "tests/CalibGeom.Pictures.Tests/PublicApi.txt"
        );
}
