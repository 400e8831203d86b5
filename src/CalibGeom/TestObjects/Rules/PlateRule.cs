using CalibGeom.Meshes;
using CalibGeom.TestObjects.Parts;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Rules;

/// <summary>The object fits the printer, or any printer when none is named.</summary>
internal sealed class PlateRule : IDesignRule
{
    /// <summary>What is too large for any printer of this kind, mm.</summary>
    private const double Largest = 500;

    public IEnumerable<Finding> Check(ObjectPlan plan)
    {
        PlateSize plate = plan.Spec.Process?.Plate ?? new PlateSize(Largest, Largest, Largest);
        Vector3D size = PlanExtent.Of(plan).Size;
        return
        [
            .. Fits("width", size.X, plate.X),
            .. Fits("depth", size.Y, plate.Y),
            .. Fits("height", size.Z, plate.Z),
        ];
    }

    private static IEnumerable<Finding> Fits(string what, double value, double limit)
    {
        if (value > limit)
            yield return Judge.Finding(
                "larger-than-plate",
                Severity.Error,
                "process.plate",
                $"The object's {what}",
                value,
                limit,
                "mm",
                "Leave groups out, make sizes smaller or tilt less."
            );
    }
}
