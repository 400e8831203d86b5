namespace CalibGeom.Light;

/// <summary>What light makes of gaps that lie above each other, as the slots of a squeeze tab do.</summary>
internal static class StackedRoofs
{
    /// <summary>How many penetration depths above a roof still count: e^-40 of the light comes through.</summary>
    private const double Deep = 40;

    /// <summary>
    /// How far light from above cures resin under a roof, in mm: the layers of all material above it, base layers with
    /// the base exposure. Negative when not even the roof becomes solid.
    /// </summary>
    /// <param name="roof">Height of the roof above the plate, mm.</param>
    /// <param name="above">The gaps above it, mm above the plate; what is not a gap is material.</param>
    /// <param name="light">The light of all layers.</param>
    internal static double PrintThrough(double roof, (double From, double To)[] above, LayerLight light)
    {
        // Roofs lie on the grid, so that one at a layer's border may be a little below it.
        const double OnBorder = 0.02;
        double depth = light.Curve.PenetrationDepth,
            dose = 0;
        for (
            int layer = (int)Math.Floor(roof / light.Layer + OnBorder);
            (layer + 1) * light.Layer - roof < Deep * depth;
            layer++
        )
            if (!Array.Exists(above, gap => IsIn(gap, (layer + 0.5) * light.Layer)))
                dose += light.DoseOf(layer) * Math.Exp((roof - (layer + 1) * light.Layer) / depth);
        return light.Curve.Depth(dose);
    }

    private static bool IsIn((double From, double To) gap, double height) => height > gap.From && height <= gap.To;
}
