using CalibGeom.Inspection.Layers;
using CalibGeom.Meshes;
using CalibGeom.Slicing;

namespace CalibGeom.Tests.Inspection;

/// <summary>What layers that appear all at once take: all allocations count, which bounds what is held.</summary>
public class LayerMemoryTests
{
    private static readonly LayerSettings Coarse = new() { LayerHeight = 1 };

    // Few rows of many pixels.
    private static readonly LayerSettings Wide = Coarse with { PixelX = 0.002, PixelY = 0.8 };

    /// <summary>
    /// A slab of 6 million pixels in mid-air is an island, told from its runs of pixels; the pixels themselves took
    /// 250 MB.
    /// </summary>
    [Fact]
    public void AWideIslandTakesNoMemoryForItsPixels()
    {
        TriangleMesh mesh = Shapes.Join(Shapes.Box(0, 0, 0, 100, 100, 2), Shapes.Box(0, 0, 4, 100, 100, 6));
        PixelGrid grid = PixelGrid.Covering(mesh.Bounds, 0.04, 0.04);
        var slab = new LayerMaskBuilder(grid);
        for (int y = 0; y < grid.Height; y++)
        {
            slab.Add(1, grid.Width - 1);
            slab.EndRow();
        }
        LayerMask current = slab.ToMask(),
            below = LayerMask.Empty(grid);
        Assert.True(current.PixelCount > 6_000_000);
        long before = GC.GetAllocatedBytesForCurrentThread();
        var overhangs = new OverhangCheck(grid, Coarse);
        overhangs.Check(4, 4, current, below);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 1, 2_000_000);
        Assert.Empty(overhangs.Defects);
        Assert.Equal(10_000, Assert.Single(LayerInspection.Run(mesh, Coarse).Defects).Size, 10);
    }

    [Fact]
    public void ATableTopThatWouldTakeGigabytesIsRefusedInWords()
    {
        TriangleMesh mesh = Shapes.Join(Shapes.Box(0, 0, 0, 20, 20, 4), Shapes.Box(0, 0, 3, 260, 260, 6));
        InputException refused = Assert.Throws<InputException>(() => LayerInspection.Run(mesh, Wide));
        Assert.Contains("Layer 3 sticks out over", refused.Message, StringComparison.Ordinal);
        Assert.Contains("larger pixels", refused.Message, StringComparison.Ordinal);
        Assert.NotEmpty(LayerInspection.Run(mesh, Wide with { PixelX = 0.4 }).Defects);
    }
}
