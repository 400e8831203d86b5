namespace CalibGeom.Meshes;

/// <summary>What a mesh has of each: all that its topology is told by.</summary>
/// <param name="Vertices">Vertices that triangles use.</param>
/// <param name="Edges">Edges.</param>
/// <param name="Components">Pieces that hang together by edges.</param>
/// <param name="Fans">Fans of triangles about vertices; as many as vertices where the mesh is manifold.</param>
/// <param name="Closed">Whether every edge has two triangles with opposite directions.</param>
internal sealed record MeshCounts(int Vertices, int Edges, int Components, int Fans, bool Closed);
