namespace CalibGeom.Features.Tests;

public class PublicApiTests
{
    [Fact]
    public void ThePublicSurfaceIsTheOneInTheFile() =>
        PublicApi.RequireUnchanged(typeof(FeatureTable).Assembly, "tests/CalibGeom.Features.Tests/PublicApi.txt");
}
