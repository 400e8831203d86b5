using CalibGeom.Meshes;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.TestObjects;

public class PresetObjectTests
{
    [Theory]
    [InlineData("standard")]
    [InlineData("Standard")]
    [InlineData("STANDARD")]
    public void APresetIsFoundHoweverItsNameIsSpelt(string name) =>
        Assert.Same(Presets.Standard, Presets.Find(name)?.Spec);

    public static TheoryData<string> Names => [.. Presets.All.Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void APresetIsOneClosedPieceWithTheTunnelsThatItsVentsAndSlotsMake(string name)
    {
        TestObject made = TestObject.Of(Presets.Find(name)!.Spec);
        TriangleMesh mesh = made.ToMesh();
        Assert.Equal(1, mesh.ComponentCount);
        Assert.Equal(2 - 2 * made.TunnelCount, mesh.EulerCharacteristic);
        Assert.Equal(made.Solid!.Volume, mesh.Volume, made.Solid.Volume * 1e-9);
        Assert.Equal(0, mesh.Bounds.Min.Z);
    }

    [Fact]
    public void TheStandardObjectHasEveryKindOfFeature()
    {
        FeatureTable features = TestObject.Of(new TestObjectSpec()).Features;
        string[] ids =
        [
            "box1.outside.x",
            "box2.inside.y",
            "box3.height",
            "joint2.fit",
            "span.x",
            "span.y",
            "plinth.thickness",
            "column7.diameter",
            "column22.stood",
            "slots.open",
            "squeeze.open",
        ];
        Assert.All(ids, id => Assert.NotNull(features.Find(id)));
        Assert.Equal(11.2, features.Find("box2.outside.y")!.Nominal);
        Assert.Equal(0.315, features.Find("slot4.height")!.Nominal);
        Assert.Equal(0.5, features.Find("squeeze5.height")!.Nominal);
        Assert.Equal(8.1, features.Find("box2.inside.x")!.Nominal, 12);
        Assert.Equal(SpecDigest.Of(new TestObjectSpec()), features.Digest);
    }
}
