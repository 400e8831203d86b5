using CalibGeom.Planar;

namespace CalibGeom.Inspection.Layers;

/// <summary>Area and bounding box of one layer. Immutable.</summary>
/// <param name="Index">From 0 at the plate.</param>
/// <param name="Z">The height of the section, mm.</param>
/// <param name="Area">mm2; where shells overlap, each place counts once.</param>
/// <param name="Min">The lower left corner of the bounding box, mm; 0, 0 for an empty layer.</param>
/// <param name="Max">The upper right corner of the bounding box, mm; 0, 0 for an empty layer.</param>
public sealed record LayerSummary(int Index, double Z, double Area, Vector2D Min, Vector2D Max);
