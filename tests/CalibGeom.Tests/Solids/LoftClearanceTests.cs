using CalibGeom.Inspection.Topology;
using CalibGeom.Planar;
using CalibGeom.Solids;

namespace CalibGeom.Tests.Solids;

public class LoftClearanceTests
{
    private static Loft Box(double x0, double y0, double x1, double y1, double z0, double z1) =>
        Loft.Prism(Outline.Rectangle(x0, y0, x1, y1), z0, z1);

    public static TheoryData<string, Loft[]> Refused =>
        new()
        {
            { "overlap or touch sideways", [Box(0, 0, 2, 2, 0, 2), Box(1, 1, 3, 3, 1, 3)] },
            { "overlap or touch sideways", [Box(0, 0, 2, 2, 0, 2), Box(2, 0, 3, 2, 0, 2)] },
            { "overlap or touch sideways", [Box(0, 0, 2, 2, 0, 2), Box(2, 2, 3, 3, 1, 3)] },
            { "stands inside", [Box(0, 0, 9, 9, 0, 9), Box(3, 3, 4, 4, 1, 2)] },
            { "stands inside", [Box(3, 3, 4, 4, 1, 9), Box(0, 0, 9, 9, 0, 9)] },
            { "stands inside", [Box(3, 3, 4, 4, -1, 20), Box(0, 0, 9, 9, 0, 9)] },
            { "only along an edge", [Box(0, 0, 2, 2, 0, 2), Box(2, 0, 4, 2, 2, 4)] },
            { "only along an edge", [Box(0, 0, 2, 2, 0, 2), Box(2, 1, 4, 3, 2, 4)] },
            { "only in a point", [Box(0, 0, 2, 2, 0, 2), Box(2, 2, 4, 4, 2, 4)] },
            {
                "overlap or touch sideways",
                [Box(0, 0, 2, 2, 0, 5), new Loft(Outline.Rectangle(4, 0, 5, 2), 2, Outline.Rectangle(2, 0, 3, 2), 5)]
            },
            {
                "overlap or touch sideways",
                [Box(0, 0, 2, 2, 0, 5), new Loft(Outline.Rectangle(4, 0, 5, 2), 2, Outline.Rectangle(0, 0, 1, 2), 8)]
            },
            {
                "cross each other",
                [
                    new Loft(
                        Outline.FromMillimetres((0, 0), (2, 0), (2, 2), (0, 2)),
                        0,
                        Outline.FromMillimetres((2, 2), (0, 2), (0, 0), (2, 0)),
                        3
                    ),
                ]
            },
        };

    [Theory]
    [MemberData(nameof(Refused))]
    public void RefusesContact(string message, Loft[] lofts)
    {
        var error = Assert.Throws<ArgumentException>(() => new Solid(lofts).ToMesh());
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
        Assert.Contains("mm", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void OneUnitApartIsAccepted()
    {
        double unit = 1.0 / Grid.UnitsPerMillimetre;
        Assert.NotNull(new Solid(Box(0, 0, 2, 2, 0, 2), Box(2 + unit, 0, 3, 2, 0, 2)).ToMesh());
    }

    /// <summary>
    /// A corner less than a grid unit beside a slanted wall, on the same height and on the wall's end: the two are
    /// refused, or become a surface that nowhere meets itself.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void BodiesCloserThanTheGridAreRefusedOrDoNotCross(double bottom)
    {
        var random = new Random(20261126);
        int made = 0;
        for (int i = 0; i < 100; i++)
        {
            int dx = random.Next(2000, 9000),
                dy = random.Next(1, dx),
                x = random.Next(1, dx),
                y = (int)(((long)x * dy - 1) / dx);
            var above = new Outline([new(0, 0), new(dx, dy), new(0, 9000)]);
            var below = new Outline([new(x, y), new(-3000, -9000), new(9500, -9000)]);
            try
            {
                var solid = new Solid(Loft.Prism(above, 0, 2), Loft.Prism(below, bottom, 4));
                TopologyReport report = MeshTopology.Run(solid.ToMesh());
                Assert.DoesNotContain(report.ToFindings(), f => f.Severity != Severity.Note);
                made++;
            }
            catch (ArgumentException refused)
            {
                Assert.Contains("mm", refused.Message, StringComparison.Ordinal);
            }
        }
        Assert.True(made > 10, $"Only {made} were made.");
    }

    [Fact]
    public void AShaftMayStandInAHole()
    {
        Loft ring = Loft.Prism(new Region(Outline.Rectangle(0, 0, 9, 9), Outline.Rectangle(2, 2, 7, 7)), 0, 5);
        Assert.NotNull(new Solid(ring, Box(3, 3, 6, 6, 1, 8)).ToMesh());
    }

    [Fact]
    public void NoLoftIsRefused() => Assert.Throws<ArgumentException>(() => new Solid());
}
