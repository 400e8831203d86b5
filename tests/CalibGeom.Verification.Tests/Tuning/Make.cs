using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Tests.Tuning;

/// <summary>Trials for tests.</summary>
internal static class Make
{
    internal static TrialConditions Conditions(double layer = 0.05, string resin = "Demo grey") =>
        new(layer, resin, "bench");

    /// <summary>A trial with a growth, the same along X and Y unless a difference is given.</summary>
    internal static Trial Trial(
        double time,
        double rest,
        double growth,
        double uncertainty = 0.002,
        double difference = 0,
        double offset = 0
    ) =>
        new(new ExposureSettings(time, rest, offset), Conditions())
        {
            GrowthX = new GrowthReading(growth + difference / 2, uncertainty),
            GrowthY = new GrowthReading(growth - difference / 2, uncertainty),
            Joints = [new JointOutcome("joint1", 0.05), new JointOutcome("joint2", 0.05)],
        };

    /// <summary>Graded columns, each twice, of which those thinner than a limit were lost on the plate.</summary>
    internal static ColumnOutcome[] Columns(double limit) =>
        new[] { 0.25, 0.28, 0.315, 0.355, 0.4, 0.45, 0.5, 0.56, 0.63, 0.71, 0.8 }
            .SelectMany(d =>
                Enumerable.Repeat(
                    new ColumnOutcome(d, d < limit ? ColumnStage.Lost : ColumnStage.Cure, $"column{d}", 1.6),
                    2
                )
            )
            .ToArray();

    internal static SlotOutcome Slots(int open) => new(SlotOutcome.StandardHeights, open);
}
