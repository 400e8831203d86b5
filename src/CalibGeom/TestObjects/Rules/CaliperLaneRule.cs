using CalibGeom.TestObjects.Layout;
using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>Nothing stands where caliper jaws go beside an attached gauge face, and no label is near.</summary>
internal sealed class CaliperLaneRule : IDesignRule
{
    /// <summary>What rounding positions to pixels may take from a lane, mm.</summary>
    private const double Play = 0.15;

    public IEnumerable<Finding> Check(ObjectPlan plan) => Check(plan.Layout);

    internal static IEnumerable<Finding> Check(ObjectLayout layout)
    {
        foreach (Placement owner in layout.Parts)
        foreach (Rect lane in owner.Placed.Lanes)
        foreach (Placement other in layout.Parts)
            if (other != owner && Blocked(lane, owner, other) is { } finding)
                yield return finding;
    }

    private static Finding? Blocked(Rect lane, Placement owner, Placement other)
    {
        double distance = other.Placed.Solids.Min(lane.Grow(-Play).DistanceTo);
        if (!other.Item.IsLabel)
            return distance > 0
                ? null
                : new Finding(
                    "caliper-lane-blocked",
                    Severity.Error,
                    owner.Item.Name,
                    $"{other.Item.Name} stands where a caliper jaw goes beside {owner.Item.Name}.",
                    "Leave a part out, or make it smaller."
                );
        return distance >= Proportions.LabelToLane
            ? null
            : Judge.Finding(
                "label-near-lane",
                Severity.Warning,
                owner.Item.Name,
                $"The distance of {other.Item.Name} from the jaw beside {owner.Item.Name}",
                distance,
                Proportions.LabelToLane,
                "mm",
                "Shorten the label."
            );
    }
}
