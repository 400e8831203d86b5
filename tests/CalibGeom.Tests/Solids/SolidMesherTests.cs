using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.Tests.Meshes;

namespace CalibGeom.Tests.Solids;

public class SolidMesherTests
{
    private static TriangleMesh Closed(params Loft[] lofts)
    {
        var solid = new Solid(lofts);
        TriangleMesh mesh = solid.ToMesh();
        SurfaceCheck.RequireClosed(mesh);
        Assert.Equal(solid.Volume, mesh.Volume, 1e-9 * solid.Volume);
        return mesh;
    }

    [Fact]
    public void ABoxIsTwelveTriangles()
    {
        // CHECKS.md 10.3, box.3mf: 10 x 20 x 30 has 8 vertices, 12 triangles, 6000 mm3, 2200 mm2.
        TriangleMesh mesh = Closed(Loft.Prism(Outline.Rectangle(0, 0, 10, 20), 0, 30));
        Assert.Equal((8, 12), (mesh.VertexCount, mesh.TriangleCount));
        Assert.Equal(6000, mesh.Volume, 1e-9);
        Assert.Equal(2200, mesh.Area, 1e-9);
        Assert.Equal(2, SurfaceCheck.EulerCharacteristic(mesh));
    }

    [Theory]
    [InlineData(10, 10, true)]
    [InlineData(10, 10.01, false)]
    [InlineData(10, 12, false)]
    [InlineData(10, -10, false)]
    public void AWedgeLiesLevelOnlyAtItsOwnAngle(double made, double turned, bool fits)
    {
        double slope = -Math.Tan(made * Math.PI / 180);
        var solid = new Solid(Loft.Wedge(Outline.Rectangle(-10, -7, 10, 7), -2, 0, slope, 4));
        if (!fits)
        {
            string said = Assert.Throws<ArgumentException>(() => solid.ToMesh(TiltAxis.X, turned)).Message;
            Assert.StartsWith(
                "The oblique underside does not lie level after this turn",
                said,
                StringComparison.Ordinal
            );
            return;
        }
        TriangleMesh mesh = solid.ToMesh(TiltAxis.X, turned);
        Assert.Equal(0, mesh.Bounds.Min.Z);
        Assert.Equal(solid.Volume, mesh.Volume, 1e-4 * solid.Volume);
    }

    [Fact]
    public void ATubeHasGenusOne()
    {
        // CHECKS.md section 11: rectangular tube 20 x 16, wall 2, h 10: V 1280, area 1536.
        TriangleMesh mesh = Closed(
            Loft.Prism(new Region(Outline.Rectangle(0, 0, 20, 16), Outline.Rectangle(2, 2, 18, 14)), 0, 10)
        );
        Assert.Equal(1280, mesh.Volume, 1e-9);
        Assert.Equal(1536, mesh.Area, 1e-9);
        Assert.Equal(0, SurfaceCheck.EulerCharacteristic(mesh));
    }

    [Fact]
    public void AnOpenBoxFromFloorAndTube()
    {
        // CHECKS.md section 11: the same with a 2 mm floor: V 1664, area 1808.
        TriangleMesh mesh = Closed(
            Loft.Prism(Outline.Rectangle(0, 0, 20, 16), 0, 2),
            Loft.Prism(new Region(Outline.Rectangle(0, 0, 20, 16), Outline.Rectangle(2, 2, 18, 14)), 2, 10)
        );
        Assert.Equal(1664, mesh.Volume, 1e-9);
        Assert.Equal(1808, mesh.Area, 1e-9);
        Assert.Equal(2, SurfaceCheck.EulerCharacteristic(mesh));
    }

    [Theory]
    [InlineData(3, 1, 4, 54.4542726622231)]
    [InlineData(2, 1, 3, 21.9911485751286)]
    [InlineData(5, 3, 6, 307.8760800518)]
    public void AFrustumHasTheVolumeOfTheTables(double low, double high, double height, double volume)
    {
        // CHECKS.md section 11, frustums. Equal-area polygons keep the end areas, so only the grid separates the
        // volumes.
        TriangleMesh mesh = Closed(
            new Loft(Outline.Circle(1, 2, 2 * low, 256), 0, Outline.Circle(1, 2, 2 * high, 256), height)
        );
        Assert.Equal(volume, mesh.Volume, 2e-5 * volume);
    }

    [Fact]
    public void ALeaningCylinderKeepsItsVolume()
    {
        // CHECKS.md section 11: oblique circular cylinder r 0.5, h 3 at 45 degrees: V 2.35619449019234.
        TriangleMesh mesh = Closed(new Loft(Outline.Circle(0, 0, 1), 0, Outline.Circle(0, 0, 1).Translate(3, 0), 3));
        Assert.Equal(2.35619449019234, mesh.Volume, 2e-4);
    }

    [Fact]
    public void FlushWallsShareTheirEdges()
    {
        TriangleMesh mesh = Closed(
            Loft.Prism(Outline.Rectangle(0, 0, 10, 10), 0, 2),
            Loft.Prism(Outline.Rectangle(0, 3, 4, 7), 2, 5),
            Loft.Prism(Outline.Rectangle(6, 5, 12, 8), 2, 5)
        );
        Assert.Equal(2, SurfaceCheck.EulerCharacteristic(mesh));
        Assert.Equal(1, SurfaceCheck.Components(mesh));
    }

    [Fact]
    public void ABridgeOverTwoPostsMakesATunnel()
    {
        TriangleMesh mesh = Closed(
            Loft.Prism(Outline.Rectangle(0, 0, 10, 4), 0, 1),
            Loft.Prism(Outline.Rectangle(1, 0, 3, 4), 1, 3),
            Loft.Prism(Outline.Rectangle(7, 0, 9, 4), 1, 3),
            Loft.Prism(Outline.Rectangle(0, 0, 10, 4), 3, 4)
        );
        Assert.Equal(0, SurfaceCheck.EulerCharacteristic(mesh));
    }

    [Fact]
    public void ASkewOverlayIsClosedThroughSnapRounding()
    {
        Outline star = Outline.FromMillimetres((0, 3), (9.03, 1.017), (7.71, 5.333), (2.1, 9.007));
        TriangleMesh mesh = new Solid(
            Loft.Prism(Outline.Circle(5, 5, 7.3), 0, 2),
            Loft.Prism(star, 2, 4),
            Loft.Prism(Outline.Circle(4.5, 4.9, 5.9), 4, 6)
        ).ToMesh();
        SurfaceCheck.RequireClosed(mesh);
        Assert.Equal(2, SurfaceCheck.EulerCharacteristic(mesh));
    }

    [Fact]
    public void SeparateBodiesStaySeparate()
    {
        TriangleMesh mesh = Closed(
            Loft.Prism(Outline.Rectangle(0, 0, 1, 1), 0, 1),
            Loft.Prism(Outline.Rectangle(2, 0, 3, 1), 0, 1)
        );
        Assert.Equal(4, SurfaceCheck.EulerCharacteristic(mesh));
        Assert.Equal(2, SurfaceCheck.Components(mesh));
    }

    [Fact]
    public void TheSameSolidGivesTheSameTriangles()
    {
        Loft[] lofts =
        [
            Loft.Prism(Outline.Circle(0, 0, 20), 0, 2),
            new Loft(Outline.Circle(1, 1, 3), 2, Outline.Circle(2, 1, 2, Outline.CircleSegments(3)), 9),
        ];
        TriangleMesh once = new Solid(lofts).ToMesh(),
            again = new Solid(lofts).ToMesh();
        Assert.Equal(once.Triangles.ToArray(), again.Triangles.ToArray());
        Assert.Equal(once.Coordinates.ToArray(), again.Coordinates.ToArray());
    }
}
