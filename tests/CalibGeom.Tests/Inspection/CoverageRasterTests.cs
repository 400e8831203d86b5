using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Slicing;
using FsCheck.Xunit;
using NetTopologySuite.Geometries;

namespace CalibGeom.Tests.Inspection;

public class CoverageRasterTests
{
    [Property(MaxTest = 40)]
    public void CoverageSumsToTheAreaOfThePolygons(int seed)
    {
        var random = new Random(seed);
        TriangleMesh mesh = RandomRing(random);
        var grid = PixelGrid.Covering(mesh.Bounds, 0.13, 0.21, random.Next(3));
        LayerContours layer = OneLayer(mesh);
        CoverageRaster raster = CoverageRaster.Of(layer, grid);
        Assert.False(raster.Overlaps);
        Assert.Equal(layer.Area, raster.Area, 1e-6);
    }

    [Property(MaxTest = 8)]
    public void EachPixelHoldsTheAreaThatNetTopologySuiteCutsOutOfIt(int seed)
    {
        var random = new Random(seed);
        TriangleMesh mesh = RandomRing(random);
        // A grid smaller than the mesh: what lies outside must not leak in.
        var grid = new PixelGrid(new(-2, -1.5), 0.37, 0.29, 9, 11);
        LayerContours layer = OneLayer(mesh);
        var pixels = new float[grid.Width * grid.Height];
        CoverageRaster.Of(layer, grid).CopyTo(pixels);
        Geometry polygon = ToPolygon(layer);
        for (int y = 0; y < grid.Height; y++)
        for (int x = 0; x < grid.Width; x++)
        {
            Vector2D m = grid.Middle(x, y);
            var box = new Envelope(m.X - 0.37 / 2, m.X + 0.37 / 2, m.Y - 0.29 / 2, m.Y + 0.29 / 2);
            double expected = polygon.Intersection(polygon.Factory.ToGeometry(box)).Area / grid.PixelArea;
            Assert.Equal(expected, pixels[y * grid.Width + x], 1e-5);
        }
    }

    [Fact]
    public void OverlappingShellsDoNotCancelAndDoNotCountTwice()
    {
        TriangleMesh two = Shapes.Join(Shapes.Box(0, 0, 0, 1, 1, 1), Shapes.Box(0.25, 0.33, 0, 2.5, 2, 1));
        CoverageRaster raster = CoverageRaster.Of(OneLayer(two), PixelGrid.Covering(two.Bounds, 0.1, 0.1));
        Assert.True(raster.Overlaps);
        Assert.Equal(1 + 2.25 * 1.67 - 0.75 * 0.67, raster.Area, 1e-6);
    }

    [Fact]
    public void AShellThatStandsTwiceIsCoveredOnce()
    {
        TriangleMesh box = Shapes.Revolve(40, (0, 0), (1.03, 0), (1.03, 1), (0, 1));
        var grid = PixelGrid.Covering(box.Bounds, 0.1, 0.1);
        CoverageRaster once = CoverageRaster.Of(OneLayer(box), grid),
            twice = CoverageRaster.Of(OneLayer(Shapes.Join(box, box)), grid);
        Assert.Equal(once.Area, twice.Area, 1e-4);
        for (int y = 0; y < grid.Height; y++)
            Assert.Equal(once.ToMask().Row(y).ToArray(), twice.ToMask().Row(y).ToArray());
    }

    [Fact]
    public void AnInsideOutShellCoversNothing()
    {
        TriangleMesh box = Shapes.InsideOut(Shapes.Box(0, 0, 0, 1, 1, 1));
        Assert.Equal(0, CoverageRaster.Of(OneLayer(box), PixelGrid.Covering(box.Bounds, 0.1, 0.1)).Area);
    }

    [Theory]
    [InlineData(0.00, 0.50, 5)]
    [InlineData(0.05, 0.55, 6)]
    [InlineData(0.04, 0.54, 5)]
    [InlineData(0.06, 0.56, 5)]
    [InlineData(-0.05, 0.44, 5)]
    public void APixelIsLitWhenHalfOfItIsCovered(double left, double right, int lit)
    {
        TriangleMesh box = Shapes.Box(left, 0, 0, right, 0.3, 1);
        LayerMask mask = CoverageRaster.Of(OneLayer(box), PixelGrid.Covering(box.Bounds, 0.1, 0.1)).ToMask();
        Assert.Equal(3 * lit, mask.PixelCount);
        PixelRun run = Assert.Single(mask.Row(2).ToArray());
        Assert.Equal(lit, run.Length);
        Assert.True(
            mask[run.Start, 2]
                && mask[run.End - 1, 2]
                && !mask[run.End, 2]
                && !mask[run.Start - 1, 2]
                && !mask[run.Start, -1]
        );
    }

    [Fact]
    public void GreyLevelsRunFrom0To255()
    {
        TriangleMesh box = Shapes.Box(0, 0, 0, 0.3, 0.15, 1);
        var pixels = new byte[3 * 2];
        CoverageRaster.Of(OneLayer(box), new PixelGrid(new(0, 0), 0.1, 0.1, 3, 2)).CopyTo(pixels);
        Assert.Equal([255, 255, 255, 128, 128, 128], pixels);
        Assert.Throws<ArgumentException>(() =>
            CoverageRaster.Of(OneLayer(box), new PixelGrid(new(0, 0), 0.1, 0.1, 3, 3)).CopyTo(pixels)
        );
    }

    [Fact]
    public void AGridNeedsFinitePixelsOfReasonableSize()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new PixelGrid(new(double.NaN, 0), 0.1, 0.1, 1, 1));
        Assert.Throws<ArgumentException>(() => new PixelGrid(new(0, 0), 0, 0.1, 1, 1));
        Assert.Throws<ArgumentException>(() => new PixelGrid(new(0, 0), 0.1, 11, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PixelGrid(new(0, 0), 0.1, 0.1, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PixelGrid(new(0, 0), 0.1, 0.1, 100_000, 100_000));
        var box = new Box3D(new(0, 0, 0), new(1e6, 1e6, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => PixelGrid.Covering(box, 0.01, 0.01));
    }

    [Fact]
    public void PixelBordersLieAtWholeMultiplesOfThePitch()
    {
        var grid = PixelGrid.Covering(new Box3D(new(-0.36, 0.1, 0), new(0.36, 0.29, 1)), 0.035, 0.1, 2);
        Assert.Equal(-13 * 0.035, grid.Origin.X, 1e-12);
        Assert.Equal(-0.1, grid.Origin.Y, 1e-12);
        Assert.Equal((26, 6), (grid.Width, grid.Height));
    }

    internal static LayerContours OneLayer(TriangleMesh mesh) => new LayerSlicer(mesh, 1, 0).Slice().First();

    private static TriangleMesh RandomRing(Random random)
    {
        int n = random.Next(4, 30);
        return Shapes.Join(
            Shapes.Prismoid(Shapes.Star(random, n, 0.1, 0.2, 2, 3), 0, Shapes.Star(random, n, 0.1, 0.2, 2, 3), 1),
            Shapes.InsideOut(
                Shapes.Prismoid(
                    Shapes.Star(random, n, 0.1, 0.2, 0.5, 1),
                    0,
                    Shapes.Star(random, n, 0.1, 0.2, 0.5, 1),
                    1
                )
            )
        );
    }

    private static Geometry ToPolygon(LayerContours layer)
    {
        var rings = Enumerable
            .Range(0, layer.Count)
            .Select(i => layer[i].ToArray().Append(layer[i][0]).Select(p => new Coordinate(p.X, p.Y)).ToArray())
            .Select(c => new LinearRing(c))
            .OrderByDescending(r => new Polygon(r).Area)
            .ToArray();
        return new Polygon(rings[0], rings[1..]);
    }
}
