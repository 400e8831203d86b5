using CalibGeom.TestObjects;

namespace CalibGeom.Pictures.BenchSheet;

/// <summary>Features in the order of work at the bench: what spoils what comes later is done last.</summary>
internal static class WorkOrder
{
    internal static readonly (string Title, string Note)[] Steps =
    [
        ("Look and count", "Before anything is touched."),
        (
            "While all stands on the plinth",
            "Heights and spans. Wipe and zero the caliper; do not look at nominal sizes."
        ),
        (
            "Boxes, outside",
            "The attached box first. Then eye protection on, break the loose boxes off, pointing away from you."
        ),
        ("Boxes, inside", "Least across the walls, most in the plane of the width."),
        ("Feel the fits", "Cut corners together, box level, no more force than said. Do not cure boxes put together."),
        ("Last, if you like", "What measuring may break."),
    ];

    internal static int StepOf(Feature feature, TestObject made)
    {
        string id = $"{feature.Id}";
        if (feature.Unit is "count" or "stage")
            return 0;
        if (feature.Unit == "fit")
            return 4;
        if (id.Contains(".outside.", StringComparison.Ordinal))
            return 2;
        if (id.Contains(".inside.", StringComparison.Ordinal))
            return 3;
        bool last =
            id.StartsWith("column", StringComparison.Ordinal)
            || id.StartsWith("slot", StringComparison.Ordinal)
            || id.StartsWith("squeeze", StringComparison.Ordinal);
        return last ? 5 : 1;
    }

    /// <summary>Features of a step: attached boxes before loose ones, else as the object lists them.</summary>
    internal static IEnumerable<Feature> Of(int step, TestObject made) =>
        made
            .Features.Where(f => StepOf(f, made) == step)
            .OrderBy(f =>
                made.Boxes.Any(b => b.Attached && $"{f.Id}".StartsWith($"box{b.Number}.", StringComparison.Ordinal))
                    ? 0
                    : 1
            );
}
