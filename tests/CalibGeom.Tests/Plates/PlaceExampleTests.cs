using CalibGeom.Meshes;
using CalibGeom.Plates;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.Plates;

/// <summary>The C# example of docs/place.md.</summary>
public class PlaceExampleTests
{
    [Fact]
    public void TheExampleOnThePageWorks()
    {
        TriangleMesh holder = Shapes.Box(-40, -15, 0, 40, 15, 9);
        using var stream = new MemoryStream();
        // begin
        var layout = new PlateLayout(
            new Plate(150, 90),
            [PlatePart.Of("holder", holder)],
            new PlacementRules { Gap = 2 }
        );
        TestObject witness = TestObject.Of(Presets.Witness);
        PlacedCoupon? placed = layout.Place(
            new Coupon("witness", witness.ToMesh(), witness.Features),
            PlacementWish.NearParts
        );
        double distance = PlateMerge.WriteStl(stream, layout, "plate with witness coupon");
        // end
        Assert.NotNull(placed);
        Assert.InRange(distance, 2, 2.05);
        Assert.Equal(84 + 50 * (12 + witness.ToMesh().TriangleCount), stream.Length);
        DocExample.RequireOn("docs/place.md");
    }
}
