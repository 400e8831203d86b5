using CalibGeom.TestObjects.Parts;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Rules;

/// <summary>What a tilted object goes without.</summary>
internal sealed class TiltRule : IDesignRule
{
    public IEnumerable<Finding> Check(ObjectPlan plan)
    {
        foreach (Finding missing in plan.Missing)
            yield return missing;
        if (plan.Tilted && plan.Spec.Process is { Snap: PixelSnap.Pixels })
            yield return Judge.Note(
                "tilt-without-snap",
                "process.snap",
                "On a tilted object nothing is moved onto pixels: its faces cross the pixels' rows."
            );
    }
}
