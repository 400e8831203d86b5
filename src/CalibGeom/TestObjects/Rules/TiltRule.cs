using CalibGeom.TestObjects.Parts;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Rules;

/// <summary>What a tilted object goes without.</summary>
internal sealed class TiltRule : IDesignRule
{
    public IEnumerable<Finding> Check(ObjectPlan plan)
    {
        if (!plan.Tilted)
            yield break;
        if (plan.Spec.Squeeze is not null)
            yield return Judge.Note(
                "tilt-without-squeeze",
                "squeeze.open",
                "A tilted object has no squeeze tab: its slots would not be level with the plate."
            );
        yield return Judge.Note(
            "tilt-without-thickness",
            "plinth.thickness",
            "A tilted object has no pad for the plinth's thickness: a wedge is below the plinth."
        );
        if (plan.Spec.Process is { Snap: PixelSnap.Pixels })
            yield return Judge.Note(
                "tilt-without-snap",
                "process.snap",
                "On a tilted object nothing is moved onto pixels: its faces cross the pixels' rows."
            );
    }
}
