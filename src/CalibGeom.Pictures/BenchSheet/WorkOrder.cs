using CalibGeom.TestObjects;

namespace CalibGeom.Pictures.BenchSheet;

/// <summary>Features in the order of work at the bench: what spoils what comes later is done last.</summary>
internal static class WorkOrder
{
    /// <summary>Title and note of each <see cref="WorkStep"/>.</summary>
    internal static readonly (string Title, string Note)[] Steps =
    [
        ("Look and count", "Before anything is touched."),
        ("While all stands on the plinth", "Heights. Wipe and zero the caliper; do not look at nominal sizes."),
        (
            "Outside sizes",
            "Eye protection on: break the loose boxes off, away from you. Flats of the jaws, middle of the faces, least reading."
        ),
        ("Inside sizes", "Least across the walls, most in the plane of the width."),
        ("Feel the fits", "Cut corners together, box level, no more force than said. Do not cure boxes put together."),
        ("Last, if you like", "What measuring may break."),
    ];

    /// <summary>Features of a step: attached boxes before loose ones, else as the object lists them.</summary>
    internal static IEnumerable<Feature> Of(int step, TestObject made) =>
        made.Features.Where(f => (int)f.Step == step).OrderBy(f => IsAttached(f.Id, made) ? 0 : 1);

    private static bool IsAttached(FeatureId id, TestObject made) =>
        made.Boxes.Any(b => b.Attached && id.Part == KnownFeatures.Box && id.Number == b.Number);
}
