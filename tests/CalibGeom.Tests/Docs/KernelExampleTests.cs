using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.Tests.Meshes;

namespace CalibGeom.Tests.Docs;

public class KernelExampleTests
{
    [Fact]
    public void TheExampleRunsAndStandsInTheDocs()
    {
        using var stream = new MemoryStream();

        // begin
        Outline plate = Outline.Rectangle(-15, -10, 15, 10);
        Region tube = new(Outline.Circle(0, 0, 12), Outline.Circle(0, 0, 10));
        var solid = new Solid(
            Loft.Prism(plate, 0, 2),
            Loft.Prism(tube, 2, 8),
            new Loft(Outline.Circle(-11, 0, 3, 64), 2, Outline.Circle(-11, 0, 1, 64), 9),
            new Loft(Outline.Rectangle(10, -2, 12, 2), 2, Outline.Rectangle(11, -2, 13, 2), 6)
        );
        TriangleMesh mesh = solid.ToMesh();
        StlWriter.Write(stream, mesh, "tube gauge, mm");
        // end

        SurfaceCheck.RequireClosed(mesh);
        Assert.Equal(solid.Volume, mesh.Volume, 1e-9 * solid.Volume);
        Assert.Equal(84 + 50 * mesh.TriangleCount, stream.Length);
        DocExample.RequireOn("docs/kernel.md");
    }
}
