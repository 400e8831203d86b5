using CalibGeom.Meshes;
using CalibGeom.Slicing;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Inspection;

public class LayerSlicerTests
{
    [Property(MaxTest = 30)]
    public void EveryLayerIsTheCrossSectionAtItsMiddle(int seed)
    {
        var random = new Random(seed);
        int n = random.Next(3, 12);
        TriangleMesh mesh = Shapes.Join(
            Shapes.Prismoid(
                Shapes.Star(random, n, 0, 0, 1, 4),
                0.5,
                Shapes.Star(random, n, 1, 0, 1, 4),
                2 + random.NextDouble()
            ),
            Shapes.Box(6, 0, 0, 8, 1, 1.25)
        );
        var slicer = new LayerSlicer(mesh, 0.1);
        int layers = 0;
        foreach (LayerContours layer in slicer.Slice())
        {
            CrossSection section = mesh.CrossSection(layer.Z);
            Assert.Equal(layers++, layer.Index);
            Assert.Equal(0, layer.GapCount);
            Assert.Equal(section.Contours.Count, layer.Count);
            Assert.Equal(section.Area, layer.Area, 1e-12);
            Assert.Equal(section.Contours.Sum(c => c.Points.Length), layer.Points.Length);
        }
        Assert.Equal(slicer.LayerCount, layers);
    }

    [Theory]
    [InlineData(2.50, 50)]
    [InlineData(2.52, 50)]
    [InlineData(2.53, 51)]
    [InlineData(0.02, 0)]
    public void ALayerCountsWhenItsMiddleLiesInTheMesh(double height, int layers) =>
        Assert.Equal(layers, new LayerSlicer(Shapes.Box(0, 0, 0, 1, 1, height), 0.05).LayerCount);

    [Fact]
    public void TheLayersOfAHemisphereHaveTheAreasOfItsCircles()
    {
        const int n = 720,
            rings = 900;
        var profile = Enumerable
            .Range(0, rings + 1)
            .Select(i => (5 * Math.Cos(Math.PI / 2 * i / rings), 5 * Math.Sin(Math.PI / 2 * i / rings)))
            .Select((p, i) => i == rings ? (0, 5) : p)
            .Prepend((0, 0))
            .ToArray();
        foreach (LayerContours layer in new LayerSlicer(Shapes.Revolve(n, profile), 0.05).Slice())
        {
            double expected = Math.PI * (25 - layer.Z * layer.Z);
            Assert.InRange(layer.Area, expected * 0.9999 - 1e-3, expected);
        }
    }

    [Fact]
    public void APlateBelowTheMeshLeavesEmptyLayers()
    {
        var slicer = new LayerSlicer(Shapes.Box(0, 0, 1, 1, 1, 2), 0.25, 0);
        Assert.Equal(8, slicer.LayerCount);
        Assert.Equal([0, 0, 0, 0, 1, 1, 1, 1], slicer.Slice().Select(l => l.Count));
    }

    [Fact]
    public void AnOpenMeshIsSlicedAndItsGapsCounted()
    {
        TriangleMesh box = Shapes.Box(0, 0, 0, 1, 1, 1);
        var open = new TriangleMesh(box.Coordinates, box.Triangles[3..]);
        Assert.Contains(new LayerSlicer(open, 0.1).Slice(), l => l.GapCount == 1);
    }

    [Fact]
    public void LayersAreAThousandthToTenMillimetres()
    {
        TriangleMesh box = Shapes.Box(0, 0, 0, 1, 1, 1);
        Assert.Throws<ArgumentOutOfRangeException>(() => new LayerSlicer(box, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LayerSlicer(box, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LayerSlicer(box, 10.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LayerSlicer(box, 0.05, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LayerSlicer(Shapes.Box(0, 0, 0, 1, 1, 1001), 0.001));
        Assert.Equal(0, new LayerSlicer(TriangleMesh.Empty, 0.05).LayerCount);
    }
}
