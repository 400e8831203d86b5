using CalibGeom.Meshes;

namespace CalibGeom.Solids;

/// <summary>
/// The vertex chains that the edges of one loft's ends became: by ring, by edge, in the ring's own direction.
/// </summary>
internal sealed class WallEdges
{
    internal GridPoint3D[][][] Bottom { get; set; } = [];

    internal GridPoint3D[][][] Top { get; set; } = [];
}
