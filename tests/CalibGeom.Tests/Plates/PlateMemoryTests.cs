using CalibGeom.Plates;
using static CalibGeom.Tests.Plates.Shapes;

namespace CalibGeom.Tests.Plates;

/// <summary>Counts what all threads allocate, so nothing else may run meanwhile.</summary>
[Collection(nameof(AloneCollection))]
public class PlateMemoryTests
{
    [Fact]
    public void MemoryDoesNotGrowWithThePart()
    {
        long small = Allocated(150_000),
            large = Allocated(900_000);
        Assert.InRange(large - small, long.MinValue, 4_000_000);

        static long Allocated(int triangles)
        {
            long before = GC.GetTotalAllocatedBytes(precise: true);
            var layout = new PlateLayout(new Plate(150, 90), [new WavyPart(triangles)]);
            Assert.False(layout.IsExact);
            Assert.NotNull(layout.Place(Coupon(25, 14, 8), PlacementWish.NearParts));
            Assert.True(PlateMerge.WriteStl(Stream.Null, layout, "plate") >= 2);
            return GC.GetTotalAllocatedBytes(precise: true) - before;
        }
    }
}
