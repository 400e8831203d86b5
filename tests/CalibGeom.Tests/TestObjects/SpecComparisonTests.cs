using CalibGeom.Meshes;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Comparison;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Tests.Inspection;

namespace CalibGeom.Tests.TestObjects;

public class SpecComparisonTests
{
    public static TheoryData<string, string[]> Objects()
    {
        var data = new TheoryData<string, string[]>();
        foreach (Preset preset in Presets.All)
            data.Add(preset.Name, []);
        data.Add("standard", ["tilt.angle=12"]);
        data.Add("witness", ["tilt.axis=y", "tilt.angle=-20"]);
        data.Add("standard", ["columns.lean=30", "columns.azimuth=200"]);
        data.Add("standard", ["columns.lean=20", "tilt.angle=-15"]);
        return data;
    }

    [Theory]
    [MemberData(nameof(Objects))]
    public void AMeshOfTheSpecHasItsSizesWhereverItStands(string preset, string[] assignments)
    {
        TestObject made = Made(preset, assignments);
        TriangleMesh mesh = made.ToMesh();
        Assert.Empty(SpecComparison.Check(mesh, made));
        Assert.Empty(SpecComparison.Check(mesh.Transform(Affine3D.Shift(new(70.3, -12.11, 4))), made));
    }

    // Sizes of the standard preset, each changed a little in the object that the mesh is made from.
    [Theory]
    [InlineData("spans.y=25.4", "span.y")]
    [InlineData("slots.heights=[0.16,0.20,0.27,0.315,0.40,0.50,0.63,0.80]", "slot3.height")]
    [InlineData("squeeze.heights=[0.1,0.16,0.25,0.4,0.48]", "squeeze5.height")]
    [InlineData("squeeze.heights=[0.1,0.16,0.25,0.4]", "squeeze.open squeeze5.height")]
    [InlineData("plinth.thickness=2.55", "plinth.thickness")]
    [InlineData("nest.clearances=[0.08,0.04]", "box2.inside.x box2.inside.y box3.inside.x box3.inside.y box3.height")]
    [InlineData("nest.gaugeBand=6", "box3.height")]
    [InlineData(
        "columns.diameters=[0.25,0.28,0.315,0.355,0.40,0.46,0.50,0.56,0.63,0.71,0.80]",
        "column11.diameter column12.diameter"
    )]
    public void ASizeThatDiffersIsNamed(string assignment, string features)
    {
        TestObject made = Made("standard");
        IReadOnlyList<Finding> findings = SpecComparison.Check(Made("standard", assignment).ToMesh(), made);
        Assert.All(findings, f => Assert.Equal(("spec-size", Severity.Error), (f.Rule, f.Severity)));
        Assert.Equal(
            features.Split(' '),
            findings.Select(f => f.Subject).Where(s => !s.StartsWith("size.", StringComparison.Ordinal))
        );
    }

    [Theory]
    [InlineData("nest.clearances=[0.08,0.04]", "box2.inside.x box2.inside.y box3.inside.x box3.inside.y box3.height")]
    [InlineData("slots.heights=[0.16,0.20,0.27,0.315,0.40,0.50,0.63,0.80]", "slot3.height")]
    [InlineData(
        "columns.diameters=[0.25,0.28,0.315,0.355,0.40,0.46,0.50,0.56,0.63,0.71,0.80]",
        "column11.diameter column12.diameter"
    )]
    public void SizesOfATiltedObjectAreComparedToo(string assignment, string features)
    {
        const string Tilt = "tilt.angle=15";
        IReadOnlyList<Finding> findings = SpecComparison.Check(
            Made("standard", Tilt, assignment).ToMesh(),
            Made("standard", Tilt)
        );
        Assert.Equal(
            features.Split(' '),
            findings.Select(f => f.Subject).Where(s => !s.StartsWith("size.", StringComparison.Ordinal))
        );
    }

    /// <summary>
    /// Every size and count that a feature table holds is compared: with everything but the plinth gone, all of them
    /// are missing.
    /// </summary>
    [Fact]
    public void EverySizeOfTheFeatureTableIsCompared()
    {
        TestObject made = Made("standard");
        Box3D bounds = made.ToMesh().Bounds;
        TriangleMesh block = Shapes.Box(
            bounds.Min.X,
            bounds.Min.Y,
            bounds.Min.Z,
            bounds.Max.X,
            bounds.Max.Y,
            bounds.Max.Z
        );
        var compared = SpecComparison.Check(block, made).Select(f => f.Subject).ToHashSet();
        foreach (Feature feature in made.Features.Where(f => f.Unit is "mm" or "count" && f.Faces != FaceKind.Inside))
            Assert.Contains(feature.Id.ToString(), compared);
    }

    [Fact]
    public void AnEmptyMeshHasNothingOfTheSpec() =>
        Assert.Equal("spec-size", Assert.Single(SpecComparison.Check(TriangleMesh.Empty, Made("witness"))).Rule);

    /// <summary>
    /// Every corner of a part's own mesh carries the part's name, also when the object is tilted and moved.
    /// </summary>
    [Theory]
    [InlineData("tilt.angle=0")]
    [InlineData("tilt.angle=20")]
    public void PlacesAreNamedAfterTheirParts(string tilt)
    {
        TestObject made = Made("standard", tilt, "title=AB");
        TriangleMesh mesh = made.ToMesh().Transform(Affine3D.Shift(new(5, 6, 7)));
        Func<Vector3D, string> nameOf = SpecComparison.Names(mesh, made);
        string[] names = [.. Enumerable.Range(0, mesh.VertexCount).Select(v => nameOf(mesh.Vertex(v)))];
        Assert.DoesNotContain("", names);
        string[] expected =
        [
            "box1",
            "box2",
            "box3",
            "column1",
            "column22",
            "span.x",
            "span.y",
            "slots",
            "plinth",
            "label.title",
            "arrow",
        ];
        Assert.Empty(expected.Except(names));
        Assert.Equal(tilt == "tilt.angle=0", names.Contains("squeeze"));
        Vector3D top = Enumerable.Range(0, mesh.VertexCount).Select(mesh.Vertex).MaxBy(v => v.Z);
        Assert.StartsWith("box", nameOf(top), StringComparison.Ordinal);
        Assert.Equal("", nameOf(new(5, 6, 60)));
    }

    private static TestObject Made(string preset, params string[] assignments) =>
        TestObject.Of(SpecJson.With(Presets.Find(preset)!.Spec, assignments));
}
