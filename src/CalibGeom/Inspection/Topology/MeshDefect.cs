using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Topology;

/// <summary>How often one kind of defect was found and where first. Immutable.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Count">How many there are; 0 when the mesh is free of it.</param>
/// <param name="Places">A point on each of the first ones, mm, at most <see cref="MostPlaces"/>.</param>
/// <param name="Triangles">A triangle of each of these, by its number in the mesh.</param>
public sealed record MeshDefect(
    DefectKind Kind,
    int Count,
    IReadOnlyList<Vector3D> Places,
    IReadOnlyList<int> Triangles
)
{
    /// <summary>How many places are kept for each kind: 10.</summary>
    public const int MostPlaces = 10;
}
