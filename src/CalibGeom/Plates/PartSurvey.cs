using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>What one look through a part tells. Immutable.</summary>
/// <param name="Name">The part.</param>
/// <param name="TriangleCount">The number of its facets.</param>
/// <param name="Bounds">The box round it, mm.</param>
/// <param name="IsClosed">Whether every edge has its opposite (up to a chance of 2^-64).</param>
public sealed record PartSurvey(string Name, long TriangleCount, Box3D Bounds, bool IsClosed);
