using System.Globalization;
using CalibGeom.Meshes;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Tests.TestObjects;

namespace CalibGeom.Tests.Docs;

public class TestObjectPageTests
{
    private const string Page = "docs/test-object.md";

    [Fact]
    public void TheExampleRunsAndStandsInTheDocs()
    {
        // begin
        TestObject made = TestObject.Of(new TestObjectSpec { Title = "DEMO GREY", Columns = null });
        foreach (Finding finding in made.Findings.Where(f => f.Severity != Severity.Note))
            Console.Error.WriteLine($"{finding.Subject}: {finding.Message} {finding.Remedy}");
        TriangleMesh mesh = made.ToMesh();
        FeatureTable whatToMeasure = made.Features;
        // end

        Assert.True(mesh.IsClosed);
        Assert.NotNull(whatToMeasure.Find("slots.open"));
        DocExample.RequireOn(Page);
    }

    [Fact]
    public void ThePageGivesTheSizesOfThePresets()
    {
        string rows = string.Join('\n', Presets.All.Select(p => Row(p.Name, TestObject.Of(p.Spec))));
        string page = File.ReadAllText(Path.Combine(Repository.Root, Page)).ReplaceLineEndings("\n");
        Assert.True(page.Contains(rows, StringComparison.Ordinal), $"{Page} does not show:\n{rows}");
    }

    [Fact]
    public void ThePageNamesEveryRule()
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, Page));
        IEnumerable<string> rules = DesignRuleTests.Broken.Select(row => (string)row[0]);
        Assert.All(rules.Distinct(), rule => Assert.Contains($"`{rule}`", page, StringComparison.Ordinal));
    }

    private static string Row(string name, TestObject made)
    {
        TriangleMesh mesh = made.ToMesh();
        IEnumerable<int> plinth = made.Solid!.Lofts[1].Bottom.Outer.Points.ToArray().Select(p => p.X);
        IEnumerable<int> depth = made.Solid.Lofts[1].Bottom.Outer.Points.ToArray().Select(p => p.Y);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| `{name}` | {(plinth.Max() - plinth.Min()) / 8192.0:0.0} x "
                + $"{(depth.Max() - depth.Min()) / 8192.0:0.0} mm | {mesh.Bounds.Size.Z:0.0} mm | "
                + $"{mesh.Volume / 1000:0.0} mL | {mesh.TriangleCount} |"
        );
    }
}
