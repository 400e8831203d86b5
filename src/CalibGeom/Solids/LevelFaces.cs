namespace CalibGeom.Solids;

/// <summary>What shows at a level: triangles of its vertices, outward.</summary>
internal sealed record LevelFaces(LevelVertices Vertices, List<(int A, int B, int C)> Triangles)
{
    internal static LevelFaces None { get; } = new(new LevelVertices([]), []);

    internal void AddTo(MeshAssembly mesh)
    {
        foreach ((int a, int b, int c) in Triangles)
            mesh.Add(Vertices.IndexIn(mesh, a), Vertices.IndexIn(mesh, b), Vertices.IndexIn(mesh, c));
    }
}
