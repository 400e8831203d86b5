namespace CalibGeom.Tests;

public class PublicApiTests
{
    [Fact]
    public void ThePublicSurfaceIsTheOneInTheFile() =>
        PublicApi.RequireUnchanged(typeof(CalibGeom.Planar.Grid).Assembly, "tests/CalibGeom.Tests/PublicApi.txt");
}
