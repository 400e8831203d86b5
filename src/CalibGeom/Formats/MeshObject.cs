using CalibGeom.Meshes;

namespace CalibGeom.Formats;

/// <summary>A named mesh in a file.</summary>
/// <param name="Name">The name the file gives it; may be empty.</param>
/// <param name="Mesh">The mesh, mm.</param>
public sealed record MeshObject(string Name, TriangleMesh Mesh);
