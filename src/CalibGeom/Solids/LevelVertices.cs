using CalibGeom.Meshes;

namespace CalibGeom.Solids;

/// <summary>The vertices of one level; each is looked up in the mesh once.</summary>
internal sealed class LevelVertices
{
    private readonly GridPoint3D[] points;
    private readonly int[] indices;

    internal LevelVertices(GridPoint3D[] points)
    {
        this.points = points;
        indices = new int[points.Length];
        Array.Fill(indices, -1);
    }

    /// <summary>The index that a vertex has, or now gets, in the mesh.</summary>
    internal int IndexIn(MeshAssembly mesh, int vertex) =>
        indices[vertex] >= 0 ? indices[vertex] : indices[vertex] = mesh.Index(points[vertex]);
}
