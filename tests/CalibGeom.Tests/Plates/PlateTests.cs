using CalibGeom.Meshes;
using CalibGeom.Plates;
using static CalibGeom.Tests.Plates.Shapes;

namespace CalibGeom.Tests.Plates;

public class PlateTests
{
    [Fact]
    public void ARefusalSaysWhatOfThePlateIsWrong()
    {
        Assert.Contains("width of the plate", Refused(() => new Plate(0, 10)), StringComparison.Ordinal);
        Assert.Contains("depth of the plate", Refused(() => new Plate(10, 1001)), StringComparison.Ordinal);
        Assert.Contains("height of the plate", Refused(() => new Plate(10, 10, -1)), StringComparison.Ordinal);
        Assert.Contains("margin of the plate", Refused(() => new Plate(10, 10, margin: -1)), StringComparison.Ordinal);

        static string Refused(Func<Plate> plate) => Assert.ThrowsAny<ArgumentException>(plate).Message;
    }

    [Fact]
    public void TheBoxRoundAllPartsHoldsEach()
    {
        var layout = new PlateLayout(
            new Plate(120, 120),
            [Part(Box(-30, -5, 1, -10, 25, 20)), Part(Box(5, -40, 0, 8, 3, 35)), Part(Box(0, 0, 2, 50, 1, 3))]
        );
        Assert.Equal(new Box3D(new(-30, -40, 0), new(50, 25, 35)), layout.PartBounds);
    }

    /// <summary>A ring's border is convex all round; its hole is no shadow, however small.</summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(3)]
    [InlineData(8)]
    public void NoHullStandsForAShadowWithAHole(double inner)
    {
        Footprint ring = Footprint.BothTurns(Ring(inner, 10, 0, 5))[0];
        Assert.Equal(inner, ring.Tree.Distance(0, 0, 100), 0.05);
        Assert.Equal(0, Footprint.BothTurns(Ring(0.001, 10, 0, 5))[0].Tree.Distance(0, 0, 100), 0.05);
    }
}
