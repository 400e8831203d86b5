using CalibGeom.Formats.Stl;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.Docs;

public class ReadmeExampleTests
{
    [Fact]
    public void TheExampleRunsAndStandsInTheReadme()
    {
        using var stl = new MemoryStream();
        using var output = new StringWriter();

        // begin
        TestObjectSpec spec = Presets.Limit(growthTolerance: 0.03) with
        {
            Title = "Demo grey",
        };
        TestObject made = TestObject.Of(spec);
        foreach (Finding finding in made.Findings)
            output.WriteLine($"{finding.Severity} {finding.Subject}: {finding.Message}");
        StlWriter.Write(stl, made.ToMesh(), ObjectHeader.Of("limit", SpecDigest.Of(spec)));
        // end

        Assert.Equal(new PerAxis(-0.06, 0.3), spec.Nest!.Clearances[1]);
        Assert.Equal(84 + 50 * made.ToMesh().TriangleCount, stl.Length);
        DocExample.RequireOn("README.md");
    }
}
