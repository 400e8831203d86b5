using CalibGeom.Planar;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Planar;

public class ConvexHullTests
{
    [Property(MaxTest = 300)]
    public void TheHullTurnsLeftAtEachCornerAndHoldsAllPoints(byte[] places, bool coarse)
    {
        int most = coarse ? 4 : 256;
        (double X, double Y)[] points =
        [
            .. places.Chunk(2).Where(c => c.Length == 2).Select(c => ((double)(c[0] % most), (double)(c[1] % most))),
        ];
        (double X, double Y)[] hull = ConvexHull.Of(points);
        Assert.Equal(hull.Length, hull.Distinct().Count());
        Assert.Subset(points.ToHashSet(), hull.ToHashSet());
        for (int i = 0; i < hull.Length && hull.Length > 2; i++)
        {
            (double X, double Y) a = hull[i],
                b = hull[(i + 1) % hull.Length];
            Assert.True(Left(a, b, hull[(i + 2) % hull.Length]) > 0);
            Assert.All(points, p => Assert.True(Left(a, b, p) >= 0));
        }
        // Fewer than three corners: all points lie on the line between them.
        if (hull.Length < 3)
            Assert.All(points, p => Assert.Equal(0, Left(hull[0], hull[^1], p)));
    }

    private static double Left((double X, double Y) a, (double X, double Y) b, (double X, double Y) c) =>
        (b.X - a.X) * (c.Y - b.Y) - (b.Y - a.Y) * (c.X - b.X);
}
