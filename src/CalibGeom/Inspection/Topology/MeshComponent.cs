using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Topology;

/// <summary>One piece of a mesh: triangles that hang together by edges.</summary>
public sealed record MeshComponent
{
    /// <summary>Its first triangle, by number in the mesh.</summary>
    public required int FirstTriangle { get; init; }

    /// <summary>How many triangles it has.</summary>
    public required int TriangleCount { get; init; }

    /// <summary>Whether each of its edges has two triangles with opposite directions.</summary>
    public required bool IsClosed { get; init; }

    /// <summary>The number of holes through it; null when it is not closed.</summary>
    public required int? Genus { get; init; }

    /// <summary>
    /// The signed volume in mm3: negative when the outside is turned in, as it is for a cavity; without meaning when
    /// not closed.
    /// </summary>
    public required double Volume { get; init; }

    /// <summary>The surface in mm2.</summary>
    public required double Area { get; init; }

    /// <summary>The box round it, mm.</summary>
    public required Box3D Bounds { get; init; }

    /// <summary>
    /// Whether it is the wall of a hollow inside another component: closed, with negative volume, enclosed by material.
    /// </summary>
    public required bool IsCavity { get; init; }

    /// <summary>Whether it is closed and turned inside out, and no cavity.</summary>
    public bool IsInsideOut => IsClosed && Volume < 0 && !IsCavity;
}
