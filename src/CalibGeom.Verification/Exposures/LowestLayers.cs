using CalibGeom.Dose;
using CalibGeom.TestObjects;

namespace CalibGeom.Verification.Exposures;

/// <summary>
/// What happens next to the plate: base layers get more light, and the lowest layers are squeezed because the first ones start too close to
/// the plate. Squeezing is an assumption of ours, without a source: the slots of the squeeze tab give way one after the other from the plate
/// upward, each losing what print-through left of it. Immutable.
/// </summary>
public sealed record LowestLayers
{
    /// <summary>The lowest layers.</summary>
    /// <param name="squeeze">Height lost next to the plate in mm, 0 to 10. Default 0.</param>
    /// <param name="baseLayers">Number of base layers, 0 to 1000. Default 5.</param>
    /// <param name="baseTime">Exposure of a base layer in s, 0 to 1000. Default 25.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public LowestLayers(double squeeze = 0, int baseLayers = 5, double baseTime = 25)
    {
        Squeeze = Require.Within(squeeze, 0, 10, "squeeze of the lowest layers", "mm", nameof(squeeze));
        BaseLayers = (int)Require.Within(baseLayers, 0, 1000, "number of base layers", "layers", nameof(baseLayers));
        BaseTime = Require.Within(baseTime, 0, 1000, "base exposure", "s", nameof(baseTime));
    }

    /// <summary>Height lost next to the plate in mm.</summary>
    public double Squeeze { get; }

    /// <summary>Number of base layers.</summary>
    public int BaseLayers { get; }

    /// <summary>Exposure of a base layer in s.</summary>
    public double BaseTime { get; }

    /// <summary>
    /// How far light from above cures resin under the roof of a slot of the tab, in mm: the layers of all bars above it, those below the last
    /// base layer with the base exposure.
    /// </summary>
    /// <param name="tab">The squeeze tab.</param>
    /// <param name="slot">Number of the slot from the plate, from 1.</param>
    /// <param name="light">The light of normal layers.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such slot.</exception>
    public double PrintThrough(SqueezeSpec tab, int slot, LayerLight light)
    {
        ArgumentNullException.ThrowIfNull(tab);
        ArgumentNullException.ThrowIfNull(light);
        ArgumentOutOfRangeException.ThrowIfLessThan(slot, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(slot, tab.Slots);
        const double Deep = 40;
        double roof = slot * tab.Pitch, depth = light.Curve.PenetrationDepth, dose = 0;
        for (int layer = 1 + (int)Math.Floor(roof / light.Layer + 1e-9); layer * light.Layer - roof < Deep * depth; layer++)
        {
            if (InSlot(tab, (layer - 0.5) * light.Layer)) continue;
            double time = layer <= BaseLayers ? BaseTime : light.Time;
            dose += light.Irradiance * time * Math.Exp((roof - layer * light.Layer) / depth);
        }
        return light.Curve.Depth(dose);
    }

    /// <summary>How many slots of the tab are open right through.</summary>
    /// <param name="tab">The squeeze tab.</param>
    /// <param name="light">The light of normal layers.</param>
    public int OpenSlots(SqueezeSpec tab, LayerLight light)
    {
        ArgumentNullException.ThrowIfNull(tab);
        double toLose = Squeeze;
        int open = 0;
        for (int slot = 1; slot <= tab.Slots; slot++)
        {
            double gap = tab.SlotHeight - Math.Max(0, PrintThrough(tab, slot, light));
            if (gap > toLose) open++;
            toLose = Math.Max(0, toLose - Math.Max(0, gap));
        }
        return open;
    }

    private static bool InSlot(SqueezeSpec tab, double height)
    {
        double slot = Math.Ceiling(height / tab.Pitch);
        return slot <= tab.Slots && height > slot * tab.Pitch - tab.SlotHeight;
    }
}
