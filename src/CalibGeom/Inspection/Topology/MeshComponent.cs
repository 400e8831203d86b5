using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Topology;

/// <summary>One piece of a mesh: triangles that hang together by edges. Immutable.</summary>
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
    /// Whether it is the wall of a hollow inside another component: without a border, with negative volume, enclosed by
    /// material once.
    /// </summary>
    public bool IsCavity => IsBalanced && Volume < 0 && Enclosed > 0.5;

    /// <summary>Whether it is without a border and turned inside out, and no cavity.</summary>
    public bool IsInsideOut => IsBalanced && Volume < 0 && !IsCavity;

    /// <summary>Whether it is a body inside the material of another one: what both fill is there twice.</summary>
    public bool IsNested => IsBalanced && Volume > 0 && Enclosed > 0.5 && !Crosses;

    /// <summary>
    /// Whether as many triangles run along each of its edges one way as the other; unlike a closed one it may touch
    /// itself along an edge.
    /// </summary>
    internal bool IsBalanced { get; init; }

    /// <summary>
    /// Whether triangles of it pass through others, so that it is neither inside nor outside of them.
    /// </summary>
    internal bool Crosses { get; init; }

    /// <summary>How often other components go round it.</summary>
    internal double Enclosed { get; init; }

    /// <summary>
    /// Its volume, where it is the border between material and none; 0 where both sides are inside other bodies.
    /// </summary>
    internal double OwnVolume
    {
        get
        {
            double outside = Volume > 0 ? Enclosed : Enclosed - 1;
            return IsBalanced && outside > 0.5 && !Crosses ? 0 : Volume;
        }
    }
}
