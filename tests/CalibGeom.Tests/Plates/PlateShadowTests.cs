using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;
using CalibGeom.Plates;
using static CalibGeom.Tests.Plates.Shapes;

namespace CalibGeom.Tests.Plates;

/// <summary>What coupons keep away from.</summary>
public class PlateShadowTests
{
    [Fact]
    public void CopiesOfATriangleWhicheverWayRoundStandInTheShadowOnce()
    {
        double[] corners = [0, 0, 0, 30, 0, 0, 0, 30, 0, 5, 5, 20];
        int[] ways = [0, 1, 2, 1, 2, 0, 2, 1, 0];
        var copies = new TriangleMesh(corners, [.. Enumerable.Repeat(ways, 1000).SelectMany(w => w), 0, 1, 3]);
        PlateShadow shadow = PlateShadow.Of(
            new Plate(150, 90),
            [PlatePart.Of("copies", copies)],
            double.PositiveInfinity,
            exact: true,
            CancellationToken.None
        );
        Assert.Equal(2 * 6, shadow.Tree.Triangles.Length);
        Assert.Equal(10, shadow.Tree.Distance(-10, 0, 100));
    }

    [Fact]
    public void ALookIsStoppedWhileFacetsGoBy()
    {
        using var stop = new CancellationTokenSource();
        PlatePart part = PlatePart.Of("box", Box(-5, -5, 0, 5, 5, 5));
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() =>
            PlateShadow.Of(new Plate(150, 90), [part], double.PositiveInfinity, exact: true, stop.Token)
        );
    }

    /// <summary>
    /// A part in the wrong unit reaches farther beside the plate than a whole number of cells holds; what of it lies on
    /// the plate is found nevertheless.
    /// </summary>
    [Theory]
    [InlineData(1e6)]
    [InlineData(1e9)]
    [InlineData(1e12)]
    public void APartMayReachAsFarAsItLikes(double far)
    {
        float end = (float)far;
        var raster = new ShadowRaster(new Plate(150, 90));
        raster.Mark(
            [StlFacet.Of(-20, -20, 0, end, -20, 0, end, 20, 0), StlFacet.Of(-20, -20, 0, end, 20, 0, -20, 20, 0)],
            double.PositiveInfinity
        );
        Assert.True(Shades(-18, 0));
        Assert.True(Shades(70, 10));
        Assert.False(Shades(-22, 0));
        Assert.False(Shades(0, 22));

        bool Shades(double x, double y) =>
            raster[(int)((x - raster.MinX) / raster.Cell), (int)((y - raster.MinY) / raster.Cell)];
    }
}
