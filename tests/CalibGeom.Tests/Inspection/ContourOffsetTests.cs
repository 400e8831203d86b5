using CalibGeom.Planar;
using CalibGeom.Slicing;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Inspection;

public class ContourOffsetTests
{
    [Property(MaxTest = 100)]
    public Property AConvexContourGrowsByItsCircumference() =>
        Prop.ForAll(
            (
                from corners in Gen.Choose(3, 60)
                from radius in Gen.Choose(10, 500)
                from tenths in Gen.Choose(-25, 20)
                select (corners, radius / 100.0, tenths / 10.0)
            ).ToArbitrary(),
            c =>
            {
                (int corners, double radius, double share) = c;
                // Every edge of a regular polygon lies the inner radius from its middle.
                double inner = radius * Math.Cos(Math.PI / corners),
                    by = share * inner;
                Vector2D[] ring = [.. Enumerable.Range(0, corners).Select(i => At(radius, 2 * Math.PI * i / corners))];
                double grown = Area(new LayerContours(0, 0, ring, [corners], 0).Moved(by).Points.ToArray());
                return Math.Abs(grown - Area(ring) * Math.Pow(Math.Max(0, 1 + share), 2)) < 1e-9 * Math.Max(1, grown);
            }
        );

    [Fact]
    public void HolesShrinkVerticesOnAnEdgeDoNotMatterAndWhatVanishesTurnsInsideOut()
    {
        Vector2D[] outer = [new(0, 0), new(2, 0), new(2, 0), new(4, 0), new(4, 4), new(0, 4)],
            hole = [new(1, 1), new(1, 2), new(2, 2), new(2, 1)];
        var layer = new LayerContours(0, 0, [.. outer, .. hole], [6, 10], 0);
        LayerContours grown = layer.Moved(0.25);
        Assert.Equal(4.5 * 4.5, Area(grown[0].ToArray()), 1e-12);
        Assert.Equal(-0.25, Area(grown[1].ToArray()), 1e-12);
        var grid = new PixelGrid(new Vector2D(-1, -1), 0.1, 0.1, 60, 60);
        Assert.Equal(4.5 * 4.5 - 0.25, CoverageRaster.Of(grown, grid).Area, 1e-5);
        // A hole that closes, and a piece that is gone.
        Assert.Equal(5.2 * 5.2, CoverageRaster.Of(layer.Moved(0.6), grid).Area, 0.05);
        Assert.Equal(0, CoverageRaster.Of(new LayerContours(0, 0, outer, [6], 0).Moved(-2.1), grid).Area, 1e-6);
    }

    private static Vector2D At(double radius, double angle) => new(radius * Math.Cos(angle), radius * Math.Sin(angle));

    private static double Area(Vector2D[] ring) => Vector2D.SignedArea(ring);
}
