using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>Box widths, column diameters and tunnel heights ascend.</summary>
internal sealed class AscendingSizesRule : IDesignRule
{
    public IEnumerable<Finding> Check(ObjectPlan plan) =>
        [
            .. Of("nest.sizes", plan.Spec.Nest?.Sizes),
            .. Of("columns.diameters", plan.Spec.Columns?.Diameters),
            .. Of("slots.heights", plan.Spec.Slots?.Heights),
        ];

    private static IEnumerable<Finding> Of(string subject, IReadOnlyList<double>? values)
    {
        for (int i = 1; i < (values?.Count ?? 0); i++)
            if (values![i] <= values[i - 1])
                yield return Judge.Finding(
                    "sizes-not-ascending",
                    Severity.Error,
                    subject,
                    $"Entry {i + 1}",
                    values[i],
                    values[i - 1],
                    "mm",
                    "List the sizes in ascending order, each once; for more columns of a diameter use columns.copies."
                );
    }
}
