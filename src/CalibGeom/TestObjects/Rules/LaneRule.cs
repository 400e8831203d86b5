using CalibGeom.TestObjects.Layout;
using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>Nothing stands in a lane, and no label is near one that a caliper jaw goes through.</summary>
internal sealed class LaneRule : IDesignRule
{
    /// <summary>What rounding positions to pixels may take from a lane, mm.</summary>
    private const double Play = 0.15;

    public IEnumerable<Finding> Check(ObjectPlan plan) => Check(plan.Layout.Parts);

    internal static IEnumerable<Finding> Check(IReadOnlyList<Placement> parts)
    {
        foreach (Placement owner in parts)
        foreach (Lane lane in owner.Placed.Lanes)
        foreach (Placement other in parts)
            if (other != owner && Blocked(lane, owner, other) is { } finding)
                yield return finding;
    }

    private static Finding? Blocked(Lane lane, Placement owner, Placement other)
    {
        if (Placement.DistanceFrom(lane.Kind, other.Placed.Height) is not { } least)
            return null;
        double distance = other.Placed.Solids.Min(lane.Room.Grow(-Play).DistanceTo);
        if (least == 0)
            return distance > 0 ? null : InTheWay(lane.Kind, owner.Part.Name, other.Part.Name);
        return distance >= least
            ? null
            : Judge.Finding(
                "label-near-lane",
                Severity.Warning,
                owner.Part.Name,
                $"The distance of {other.Part.Name} from the jaw beside {owner.Part.Name}",
                distance,
                least,
                "mm",
                "Shorten the label."
            );
    }

    private static Finding InTheWay(LaneKind kind, string owner, string other) =>
        kind == LaneKind.Caliper
            ? new(
                "caliper-lane-blocked",
                Severity.Error,
                owner,
                $"{other} stands where a caliper jaw goes beside {owner}.",
                "Leave a part out, or make it smaller."
            )
            : new(
                "open-lane-blocked",
                Severity.Error,
                owner,
                $"{other} stands in front of {owner}, where light or a jaw must pass.",
                "Leave a part out, or make it smaller."
            );
}
