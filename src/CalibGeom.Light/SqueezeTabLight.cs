using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Light;

/// <summary>What light makes of the slots of a squeeze tab.</summary>
internal static class SqueezeTabLight
{
    private const double Deep = 40;

    /// <summary>
    /// How far light from above cures resin under the roof of a slot, in mm: the layers of all bars above it, base
    /// layers with the base
    /// exposure. Negative when not even the roof becomes solid.
    /// </summary>
    /// <param name="tab">The tab.</param>
    /// <param name="slot">Number of the slot from the plate, from 1.</param>
    /// <param name="light">The light of all layers.</param>
    internal static double PrintThrough(SqueezeSpec tab, int slot, LayerLight light)
    {
        double roof = slot * tab.Pitch,
            depth = light.Curve.PenetrationDepth,
            dose = 0;
        for (
            int layer = (int)Math.Floor(roof / light.Layer + 1e-9);
            (layer + 1) * light.Layer - roof < Deep * depth;
            layer++
        )
            if (!InSlot(tab, (layer + 0.5) * light.Layer))
                dose += light.DoseOf(layer) * Math.Exp((roof - (layer + 1) * light.Layer) / depth);
        return light.Curve.Depth(dose);
    }

    private static bool InSlot(SqueezeSpec tab, double height)
    {
        double slot = Math.Ceiling(height / tab.Pitch);
        return slot <= tab.Slots && height > slot * tab.Pitch - tab.SlotHeight;
    }
}
