using CalibGeom.Meshes;
using CalibGeom.OwnPart;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Comparison;
using CalibGeom.TestObjects.Parts;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.TestObjects;

/// <summary>A part of a developer's own is packed, built, judged, tabled and compared like ours.</summary>
public class OwnPartTests
{
    private static readonly TestObject Made = With(new Keyway(3, 3.2));

    [Fact]
    public void ItIsPackedAndBuiltAsOneClosedPieceWithTheOthers()
    {
        Assert.False(Made.HasErrors);
        TriangleMesh mesh = Made.ToMesh();
        Assert.Equal(1, mesh.ComponentCount);
        Assert.Equal(2 - 2 * Made.TunnelCount, mesh.EulerCharacteristic);
        double without = TestObject.Of(new TestObjectSpec()).ToMesh().Volume;
        Assert.InRange(mesh.Volume - without, 3 * 6 * 6 + (6 - 3.2) * 6 * 6 - 50, double.MaxValue);
    }

    [Fact]
    public void ItsSizesAndItsFitStandInTheTable()
    {
        Assert.Equal(3, Made.Features.Find("key.width.x")!.Nominal);
        Assert.Equal(3.2, Made.Features.Find("groove.width.x")!.Nominal);
        Assert.Equal(0.1, Assert.Single(Made.Features.Find("keyway.fit")!.Mates).Clearance, 12);
        Assert.Equal("groove.width.x", Assert.Single(Made.Gauges, g => g.Feature == "groove.width.x").Feature);
    }

    [Fact]
    public void ItIsJudgedByItsOwnRulesAndByThoseForAllParts()
    {
        Assert.Contains(With(new Keyway(3, 2.9)).Findings, f => f.Rule == "key-too-wide");
        var process = new ProcessSpec { PixelPitch = 0.04 };
        TestObject made = TestObject.Of(new TestObjectSpec { Process = process, OwnParts = [new Keyway(3, 3.21)] });
        Finding pixels = Assert.Single(made.Findings, f => f is { Rule: "pixels", Subject: "groove.width.x" });
        Assert.Contains("80 or 81 pixels", pixels.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AMeshIsComparedWithIt()
    {
        Assert.Empty(SpecComparison.Check(Made.ToMesh(), Made));
        TriangleMesh other = With(new Keyway(3, 3.3)).ToMesh();
        Assert.Equal(["groove.width.x"], SpecComparison.Check(other, Made).Select(f => f.Subject));
        Func<Vector3D, string> names = SpecComparison.Names(Made.ToMesh(), Made);
        GaugeLine key = Made.Gauges.Single(g => g.Feature == "key.width.x");
        Assert.Equal("key", names((key.From.Point + key.To.Point) * 0.5));
    }

    [Fact]
    public void ItCountsInTheDigestAndOutlivesAssignments()
    {
        string none = SpecDigest.Of(new TestObjectSpec()),
            one = SpecDigest.Of(Made.Spec),
            other = SpecDigest.Of(With(new Keyway(3, 3.3)).Spec);
        Assert.Equal(3, new[] { none, one, other }.Distinct().Count());
        Assert.Equal(one, SpecDigest.Of(With(new Keyway(3, 3.2)).Spec));
        Assert.Single(SpecJson.With(Made.Spec, ["columns.height=5"]).OwnParts);
        Assert.Throws<ArgumentNullException>(() => new TestObjectSpec { OwnParts = null! });
    }

    private static TestObject With(ITestPart part) => TestObject.Of(new TestObjectSpec { OwnParts = [part] });
}
