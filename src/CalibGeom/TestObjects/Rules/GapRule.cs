using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>Gaps wide enough to say something.</summary>
internal sealed class GapRule : IDesignRule
{
    private const double LeastSlot = 0.05,
        GoodSlot = 0.1,
        LeastClearance = 0.015;

    public IEnumerable<Finding> Check(ObjectPlan plan) =>
        [.. Slots(plan), .. PlanRecords.Joints(plan).SelectMany(Clearances)];

    private static IEnumerable<Finding> Slots(ObjectPlan plan) =>
        [
            .. plan.Spec.Slots is not { } slots
                ? []
                : Judge.AtLeast(
                    "gap-too-narrow",
                    "slots.heights",
                    "The lowest tunnel",
                    slots.Heights.Min(),
                    LeastSlot,
                    GoodSlot,
                    "mm",
                    "Print-through closes tunnels this low at any exposure; start higher."
                ),
            .. plan.Tab is null
                ? []
                : Judge.AtLeast(
                    "gap-too-narrow",
                    "squeeze.slotHeight",
                    "A slot of the squeeze tab",
                    plan.Spec.Squeeze!.SlotHeight,
                    LeastSlot,
                    GoodSlot,
                    "mm",
                    "Print-through closes slots this low at any exposure; make squeeze.slotHeight larger."
                ),
        ];

    private static IEnumerable<Finding> Clearances(JointPlan joint)
    {
        foreach (
            (string axis, double clearance) in (IReadOnlyList<(string, double)>)
                [("x", joint.Clearance.X), ("y", joint.Clearance.Y)]
        )
            if (Math.Abs(clearance) < LeastClearance)
                yield return Judge.Finding(
                    "clearance-says-nothing",
                    Severity.Warning,
                    $"joint{joint.Number}.fit",
                    $"The clearance along {axis}, neither a gap nor an overlap that could be felt,",
                    clearance,
                    LeastClearance,
                    "mm",
                    "Choose a clearance above the limit, or well below zero for a not-go joint."
                );
    }
}
