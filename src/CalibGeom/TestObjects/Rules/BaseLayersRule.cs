using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>The base layers stay thin: they are over-exposed and squeezed.</summary>
internal sealed class BaseLayersRule : IDesignRule
{
    /// <summary>mm. Common practice, no source.</summary>
    private const double Thickest = 1.0;

    public IEnumerable<Finding> Check(ObjectPlan plan) =>
        plan.Spec.Process is not { } process
            ? []
            : Judge.AtMost(
                "base-layers-thick",
                "process.baseLayers",
                "The thickness of all base layers",
                process.BaseLayers * process.LayerHeight,
                Thickest,
                "mm",
                "Use fewer base layers: they widen the plinth and hide its chamfer."
            );
}
