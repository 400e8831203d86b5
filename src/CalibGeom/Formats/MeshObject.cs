using CalibGeom.Meshes;

namespace CalibGeom.Formats;

/// <summary>A named mesh in a file. Immutable.</summary>
/// <param name="Name">The name the file gives it; may be empty.</param>
/// <param name="Mesh">The mesh, mm.</param>
public sealed record MeshObject(string Name, TriangleMesh Mesh)
{
    /// <summary>
    /// Where a 3MF is to place the mesh; the identity by default. Meshes that were read have their transforms applied.
    /// </summary>
    public Affine3D Transform { get; init; } = Affine3D.Identity;

    /// <summary>The mesh where its transform places it.</summary>
    internal TriangleMesh Placed() => Transform == Affine3D.Identity ? Mesh : Mesh.Transform(Transform);
}
