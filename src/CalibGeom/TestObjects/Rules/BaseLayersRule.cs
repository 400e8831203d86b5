using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>
/// The base layers stay thin, and tunnels keep away from them: base layers are over-exposed and squeezed.
/// </summary>
internal sealed class BaseLayersRule : IDesignRule
{
    private const double Thickest = 1.0,
        SlotsAbove = 2.0;

    public IEnumerable<Finding> Check(ObjectPlan plan)
    {
        if (plan.Spec.Process is not { } process)
            return [];
        double thickness = process.BaseLayers * process.LayerHeight;
        return
        [
            .. Judge.AtMost(
                "base-layers-thick",
                "process.baseLayers",
                "The thickness of all base layers",
                thickness,
                Thickest,
                "mm",
                "Use fewer base layers: they widen the plinth and hide its chamfer."
            ),
            .. plan.Comb is null
                ? []
                : Judge.AtLeast(
                    "slots-near-plate",
                    "slots.open",
                    "The tunnels' floor above the base layers",
                    plan.Comb.Floor - thickness,
                    0,
                    SlotsAbove,
                    "mm",
                    "Use fewer base layers or a thicker plinth: base exposure must not reach the tunnels."
                ),
        ];
    }
}
