using CalibGeom.Meshes;
using CalibGeom.Plates;

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
            [PlatePart.FromMesh("copies", copies)],
            double.PositiveInfinity,
            exact: true,
            CancellationToken.None
        );
        Assert.Equal(2 * 6, shadow.Tree.Triangles.Length);
        Assert.Equal(10, shadow.Tree.Distance(-10, 0, 100));
    }
}
