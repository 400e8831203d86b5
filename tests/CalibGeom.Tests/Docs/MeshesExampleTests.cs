using CalibGeom.Meshes;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.Docs;

public class MeshesExampleTests
{
    [Fact]
    public void TheExampleRunsAndStandsOnThePage()
    {
        // begin
        TriangleMesh mesh = TestObject.Of(Presets.Witness).ToMesh();

        // Out: spans without a copy, or arrays of your own.
        ReadOnlySpan<double> coordinates = mesh.Coordinates;
        int[] indices = mesh.Triangles.ToArray();
        var singles = new float[3 * mesh.VertexCount];
        mesh.CopyCoordinates(singles);

        // In: from 64-bit or 32-bit coordinates.
        var again = new TriangleMesh(coordinates, indices);
        var fromSingles = TriangleMesh.OfSingles(singles, indices);
        // end

        Assert.Equal(mesh.Coordinates, again.Coordinates);
        Assert.Equal(mesh.Coordinates, fromSingles.Coordinates);
        Assert.Equal(mesh.Triangles, fromSingles.Triangles);
        DocExample.RequireOn("docs/meshes.md");
    }
}
