using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Layers;

/// <summary>One thing found in the layers of a mesh. Immutable.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Place">Its worst place, mm, in the coordinates of the mesh.</param>
/// <param name="Layer">The first layer it lies in, from 0 at the plate.</param>
/// <param name="LastLayer">The last layer it lies in.</param>
/// <param name="Size">An island's area in mm2; the length of an overhang, span of a bridge, width of a wall or gap in
/// mm; the trapped volume in mm3; the lost area in mm2.</param>
public sealed record LayerDefect(LayerDefectKind Kind, Vector3D Place, int Layer, int LastLayer, double Size)
{
    /// <summary>
    /// The angle of an overhang's underside, degrees from horizontal, over its whole reach; null for other kinds.
    /// </summary>
    public double? Angle { get; init; }
}
