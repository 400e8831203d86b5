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

    /// <summary>
    /// A frame inside the hole of a frame, beside a third: each hole belongs to the frame right round it.
    /// </summary>
    [Fact]
    public void AHoleBelongsToTheSmallestOutlineRoundIt()
    {
        Outline[] bars = [.. Frame(0, 0, 20), .. Frame(5, 5, 10), .. Frame(30, 0, 6)];
        IReadOnlyList<Region> regions = Region.Union(bars);
        Assert.Equal([76.0, 36, 20], regions.Select(r => Math.Round(r.Area, 9)).OrderDescending());
        foreach (Region frame in regions)
        {
            Outline hole = Assert.Single(frame.Holes);
            Assert.Equal(Math.Sqrt(frame.Outer.Area) - 2, Math.Sqrt(hole.Area), 1e-9);
            Assert.Equal(1, frame.Outer.Locate(hole.Points[0]));
        }
    }

    /// <summary>
    /// Where two outlines touch in a point they come apart; where two holes do, the border turns at the point and
    /// touches itself, which no region can be.
    /// </summary>
    [Fact]
    public void OutlinesThatTouchInAPointComeApart()
    {
        IReadOnlyList<Region> regions = Region.Union(Outline.Rectangle(0, 0, 2, 2), Outline.Rectangle(2, 2, 5, 4));
        Assert.Equal([4.0, 6], regions.Select(r => r.Area).Order());
        Assert.All(regions, r => Assert.Equal(4, r.Outer.Count));
        IReadOnlyList<Region> four = Region.Union(
            Outline.Rectangle(0, 0, 2, 2),
            Outline.Rectangle(2, 2, 4, 4),
            Outline.Rectangle(4, 0, 6, 2),
            Outline.Rectangle(2, -2, 4, 0)
        );
        Assert.Equal(4, four.Count);
        Assert.All(four, r => Assert.Equal((4.0, 0), (r.Area, r.Holes.Count)));
    }

    private static IEnumerable<Outline> Frame(double x, double y, double size) =>
        [
            Outline.Rectangle(x, y, x + size, y + 1),
            Outline.Rectangle(x, y + size - 1, x + size, y + size),
            Outline.Rectangle(x, y, x + 1, y + size),
            Outline.Rectangle(x + size - 1, y, x + size, y + size),
        ];

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
