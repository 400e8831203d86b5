using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Solids;

/// <summary>Collects triangles of grid points and gives equal points one index.</summary>
internal sealed class MeshAssembly
{
    private readonly Dictionary<GridPoint3D, int> index = [];
    private readonly List<GridPoint3D> vertices = [];
    private readonly List<int> triangles = [];

    internal List<GridPoint3D> Vertices => vertices;

    internal List<int> Triangles => triangles;

    internal void Add(GridPoint3D a, GridPoint3D b, GridPoint3D c)
    {
        triangles.Add(Index(a));
        triangles.Add(Index(b));
        triangles.Add(Index(c));
    }

    internal TriangleMesh ToMesh()
    {
        var coordinates = new double[3 * vertices.Count];
        for (int v = 0; v < vertices.Count; v++)
        {
            coordinates[3 * v] = Grid.ToMillimetres(vertices[v].X);
            coordinates[3 * v + 1] = Grid.ToMillimetres(vertices[v].Y);
            coordinates[3 * v + 2] = Grid.ToMillimetres(vertices[v].Z);
        }
        return TriangleMesh.Adopt(coordinates, [.. triangles]);
    }

    private int Index(GridPoint3D p)
    {
        if (index.TryGetValue(p, out int found))
            return found;
        index.Add(p, vertices.Count);
        vertices.Add(p);
        return vertices.Count - 1;
    }
}
