namespace CalibGeom.Pictures.BenchSheet;

/// <summary>Features in the order of work at the bench: what spoils what comes later is done last.</summary>
internal static class WorkOrder
{
    /// <summary>
    /// Title and note of each step, its place in the order of work, and whether it is of loose boxes.
    /// </summary>
    internal static readonly (string Title, string Note, WorkStep Step, bool? Loose)[] Steps =
    [
        ("Look and count", "Before anything is touched.", WorkStep.Count, null),
        (
            "While all stands on the plinth",
            "Heights. Wipe and zero the caliper; do not look at nominal sizes.",
            WorkStep.Whole,
            null
        ),
        (
            "Outside, what stays on the plinth",
            "Flats of the jaws, middle of the faces, least reading.",
            WorkStep.Outside,
            false
        ),
        (
            "Break off, outside",
            "Eye protection on: break the loose boxes off, away from you. Mouth up, cut corner at the front right: X goes from left to right.",
            WorkStep.Outside,
            true
        ),
        ("Inside sizes", "Least across the walls, most in the plane of the width.", WorkStep.Inside, null),
        (
            "Feel the fits",
            "Cut corners together, box level, no more force than said. Do not cure boxes put together.",
            WorkStep.Feel,
            null
        ),
        ("Last, if you like", "What measuring may break.", WorkStep.Last, null),
    ];

    /// <summary>Features of a step in the order of work.</summary>
    internal static IEnumerable<Feature> Of(int step, FeatureTable table) =>
        table
            .InOrderOfWork()
            .Where(f =>
                f.Step == Steps[step].Step && (Steps[step].Loose is not { } loose || table.IsLoose(f) == loose)
            );
}
