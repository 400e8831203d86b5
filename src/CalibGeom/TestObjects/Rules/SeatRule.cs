using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>
/// A loose box against the depth of its pocket: the gauge bands face each other over some height, and enough stands out
/// to pull it.
/// </summary>
internal sealed class SeatRule : IDesignRule
{
    private const double LeastBand = 0.5,
        GoodBand = 2.0,
        LeastGrip = 0.5,
        GoodGrip = 1.0;

    public IEnumerable<Finding> Check(ObjectPlan plan) => PlanRecords.Joints(plan).SelectMany(Check);

    internal static IEnumerable<Finding> Check(JointPlan joint) =>
        [
            .. Judge.AtLeast(
                "bands-do-not-meet",
                $"joint{joint.Number}.fit",
                "The height over which the gauge bands face each other when seated",
                joint.EngagedTo - joint.EngagedFrom,
                LeastBand,
                GoodBand,
                "mm",
                "Make nest.gaugeBand and nest.pocketDepth larger, or leave more between neighbouring sizes."
            ),
            .. Judge.AtLeast(
                "box-sinks-in",
                $"joint{joint.Number}.fit",
                "What the seated box shows above its pocket",
                joint.Protrusion,
                LeastGrip,
                GoodGrip,
                "mm",
                "Leave more between neighbouring sizes."
            ),
        ];
}
