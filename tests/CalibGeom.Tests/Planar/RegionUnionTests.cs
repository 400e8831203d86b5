using CalibGeom.Planar;
using CalibGeom.Tests.Solids;
using FsCheck.Xunit;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Union;

namespace CalibGeom.Tests.Planar;

public class RegionUnionTests
{
    private static Polygon Nts(Outline outline) =>
        new(
            new LinearRing([
                .. outline
                    .Points.ToArray()
                    .Append(outline.Points[0])
                    .Select(p => new Coordinate(p.XMillimetres, p.YMillimetres)),
            ])
        );

    [Fact]
    public void NothingGivesNothing() => Assert.Empty(Region.Union());

    [Fact]
    public void CrossedBarsBecomeOneOutline()
    {
        Region cross = Assert.Single(Region.Union(Outline.Rectangle(-3, -1, 3, 1), Outline.Rectangle(-1, -3, 1, 3)));
        Assert.Equal(20, cross.Area, 1e-12);
        Assert.Equal(12, cross.Outer.Count);
    }

    [Fact]
    public void AFrameOfBarsHasAHole()
    {
        Region frame = Assert.Single(
            Region.Union(
                Outline.Rectangle(0, 0, 9, 1),
                Outline.Rectangle(0, 8, 9, 9),
                Outline.Rectangle(0, 0, 1, 9),
                Outline.Rectangle(8, 0, 9, 9)
            )
        );
        Assert.Equal(49, Assert.Single(frame.Holes).Area, 1e-12);
        Assert.Equal(32, frame.Area, 1e-12);
    }

    [Fact]
    public void BarsThatShareAnEdgeMerge()
    {
        Region bar = Assert.Single(Region.Union(Outline.Rectangle(0, 0, 2, 1), Outline.Rectangle(2, 0, 5, 1)));
        Assert.Equal(4, bar.Outer.Count);
        Assert.Equal(5, bar.Area, 1e-12);
    }

    [Fact]
    public void BarsApartStayApart() =>
        Assert.Equal(2, Region.Union(Outline.Rectangle(0, 0, 1, 1), Outline.Rectangle(2, 0, 3, 1)).Count);

    [Property(MaxTest = 100, Arbitrary = [typeof(SolidMesherRandomTests)])]
    public void AgreesWithAnIndependentOverlay(Outline[] stars)
    {
        // NetTopologySuite's floating overlay; ours may move crossings by half a grid unit.
        Geometry reference = UnaryUnionOp.Union(stars.Select(s => (Geometry)Nts(s)).ToList());
        IReadOnlyList<Region> union = Region.Union(stars);
        Assert.Equal(reference.Area, union.Sum(r => r.Area), reference.Length / Grid.UnitsPerMillimetre);
        Assert.Equal(reference.NumGeometries, union.Count);
    }
}
