using CalibGeom.Slicing;

namespace CalibGeom.Inspection.Layers;

/// <summary>What the checks need of one layer.</summary>
/// <param name="Summary">Height, area and box.</param>
/// <param name="Mask">The pixels that are covered by half or more.</param>
/// <param name="Thin">Where walls and gaps are thin.</param>
internal sealed record DrawnLayer(LayerSummary Summary, LayerMask Mask, IReadOnlyList<ThinSample> Thin)
{
    internal int Index => Summary.Index;

    internal double Z => Summary.Z;
}
