namespace CalibGeom.Meshes;

/// <summary>A triangle in space, counter-clockwise seen from outside.</summary>
/// <param name="A">The first corner, mm.</param>
/// <param name="B">The second corner, mm.</param>
/// <param name="C">The third corner, mm.</param>
public readonly record struct Triangle3D(Vector3D A, Vector3D B, Vector3D C);
