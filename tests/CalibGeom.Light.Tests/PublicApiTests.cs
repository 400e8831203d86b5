namespace CalibGeom.Light.Tests;

public class PublicApiTests
{
    [Fact]
    public void ThePublicSurfaceIsTheOneInTheFile() =>
        PublicApi.RequireUnchanged(typeof(WorkingCurve).Assembly, "tests/CalibGeom.Light.Tests/PublicApi.txt");
}
