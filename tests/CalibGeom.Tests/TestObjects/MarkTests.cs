using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Comparison;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.TestObjects;

public class MarkTests
{
    [Theory]
    [InlineData("standard")]
    [InlineData("search")]
    public void DotsStandOnThePlinthAndOnEveryBoxAndMoveNothing(string preset)
    {
        TestObjectSpec spec = Presets.Find(preset)!.Spec;
        TestObject plain = TestObject.Of(spec),
            marked = TestObject.Of(spec, mark: 3);
        Assert.Equal(plain.Features.Digest, marked.Features.Digest);
        Assert.Equal(plain.Boxes, marked.Boxes);
        Assert.DoesNotContain(
            SpecComparison.Check(marked.ToMesh(), plain),
            f => !f.Subject.StartsWith("size.z", StringComparison.Ordinal)
        );
        TriangleMesh mesh = marked.ToMesh();
        Assert.Equal(1, mesh.ComponentCount);
        foreach (BoxPlan box in marked.Boxes)
            Assert.Equal(3, Dots(mesh, box.Rim + 0.15, c => Inside(box, c)));
        double top = spec.Plinth.Thickness;
        Assert.Equal(Dots(plain.ToMesh(), top + 0.15, _ => true) + 3, Dots(mesh, top + 0.15, _ => true));
    }

    [Fact]
    public void AMarkOutOfRangeIsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => TestObject.Of(new TestObjectSpec(), -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => TestObject.Of(new TestObjectSpec(), 7));
    }

    /// <summary>Outer contours no larger than a dot of 0.5 mm.</summary>
    private static int Dots(TriangleMesh mesh, double z, Func<Vector2D, bool> where) =>
        mesh.CrossSection(z).Contours.Count(c => c.SignedArea is > 0 and < 0.21 && where(c.PlanePoints[0]));

    private static bool Inside(BoxPlan box, Vector2D p) =>
        Math.Abs(p.X - box.X) < box.Outside.X / 2 && Math.Abs(p.Y - box.Y) < box.Outside.Y / 2;
}
