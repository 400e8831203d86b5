using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>
/// Every pocket takes a caliper's inside jaws, and the gauge band fits between floor and lead-in and is as high as jaws
/// are wide.
/// </summary>
internal sealed class PocketRule : IDesignRule
{
    private const double LeastInside = 3.4,
        GoodInside = 4.0,
        LeastBand = 2.0,
        GoodBand = 3.0;

    public IEnumerable<Finding> Check(ObjectPlan plan)
    {
        if (plan.Spec.Nest is not { } nest)
            yield break;
        for (int i = 0; i < plan.Boxes.Length; i++)
            foreach (
                Finding finding in Judge.AtLeast(
                    "pocket-too-small-for-jaws",
                    $"box{i + 1}.inside.x",
                    "The inside width",
                    plan.Boxes[i].Frame.SmallestInside,
                    LeastInside,
                    GoodInside,
                    "mm",
                    "Make the box larger or its wall thinner, so that inside jaws go in."
                )
            )
                yield return finding;
        foreach (
            Finding finding in Judge.AtLeast(
                "gauge-band-too-low",
                "nest.gaugeBand",
                "The gauge band",
                nest.GaugeBand,
                LeastBand,
                GoodBand,
                "mm",
                "Make nest.gaugeBand at least as high as caliper jaws are wide."
            )
        )
            yield return finding;
        double room = nest.PocketDepth - Proportions.LeadInHeight;
        if (nest.GaugeBand > room + 1e-9)
            yield return Judge.Finding(
                "gauge-band-too-high",
                Severity.Error,
                "nest.gaugeBand",
                "The gauge band",
                nest.GaugeBand,
                room,
                "mm",
                "Make nest.pocketDepth larger or nest.gaugeBand lower: the band ends below the lead-in."
            );
    }
}
