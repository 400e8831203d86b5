using CalibGeom.Planar;

namespace CalibGeom.Tests.Planar;

public class InsertionOrderTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(9_999)]
    [InlineData(10_000)]
    [InlineData(10_001)]
    [InlineData(30_000)]
    public void EveryPointComesOnce(int count)
    {
        GridPoint[] points = Circles(count);
        int[] order = InsertionOrder.Of(points, new(-2_000_000, -2_000_000), new(2_000_000, 2_000_000));
        Assert.Equal(Enumerable.Range(0, count), order.Order());
    }

    /// <summary>However the points are put in, the circle round each triangle is empty.</summary>
    [Fact]
    public void ManyPointsOnTwoCirclesAreDelaunay()
    {
        GridPoint[] points = [.. Circles(12_000).Order()];
        var mesh = new ConstrainedDelaunay(points);
        Assert.Equal(2 * points.Length + 2, mesh.Count);
        for (int t = 0; t < mesh.Count; t++)
        {
            (int a, int b, int c) = mesh.Corners(t);
            if (a >= points.Length || b >= points.Length || c >= points.Length)
                continue;
            Assert.True(Predicates.Turn(points[a], points[b], points[c]) > 0);
            for (int side = 0; side < 3; side++)
            {
                (int other, int from, int to) = mesh.Across(t, side);
                (int d, int e, int f) = mesh.Corners(other);
                int far = d + e + f - from - to;
                if (far < points.Length)
                    Assert.True(Predicates.InCircle(points[a], points[b], points[c], points[far]) <= 0);
            }
        }
    }

    private static GridPoint[] Circles(int count) => Zigzag.Of(count, 200, 180);
}
