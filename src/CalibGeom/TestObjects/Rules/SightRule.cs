using CalibGeom.TestObjects.Layout;
using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>Enough of the straight lines through every tunnel and slot meet nothing else.</summary>
internal sealed class SightRule : IDesignRule
{
    public IEnumerable<Finding> Check(ObjectPlan plan)
    {
        (string owner, int opening, double share) = plan.Darkest;
        if (share < SightLines.LeastShare)
            yield return Judge.Finding(
                "sight-lane-narrow",
                Severity.Error,
                owner,
                $"The share of straight lines through opening {opening + 1} that meet nothing else",
                share,
                SightLines.LeastShare,
                "",
                "Leave a part out, make the spans shorter, or make the openings lower."
            );
    }
}
