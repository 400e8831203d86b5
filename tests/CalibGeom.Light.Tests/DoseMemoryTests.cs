using CalibGeom.Meshes;
using CalibGeom.Slicing;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Light.Tests;

/// <summary>What the doses of the standard object at pixels of 35 and layers of 50 micrometres hold at once.</summary>
public class DoseMemoryTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void MasksTakeLessThan30AndTheSweepLessThan10Megabytes(bool grey)
    {
        TriangleMesh mesh = TestObject.Of(Presets.Standard).ToMesh();
        PixelGrid grid = PixelGrid.Covering(mesh.Bounds, 0.035, 0.035, 4);
        MaskStack masks = MaskStack.Of(mesh, grid, 0.05, grey);
        long spans = 0;
        for (int layer = 0; layer < masks.Count; layer++)
        for (int row = 0; row < grid.Height; row++)
            spans += masks[layer].Row(row).Length;
        // A run is 12 bytes, the start of a row 4.
        Assert.InRange(12 * spans + 4L * masks.Count * (grid.Height + 1), 1, 30_000_000);

        long before = GC.GetAllocatedBytesForCurrentThread();
        int layers = new LightDose(
            masks,
            new GaussianBlur(0.02),
            new LayerLight(new WorkingCurve(0.12, 8), 4, 2.5, 0.05)
        )
            .Layers()
            .Count(l => l.Values.Length > 0);
        Assert.Equal(masks.Count, layers);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 1, 10_000_000);
    }
}
