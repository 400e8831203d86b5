namespace CalibGeom.TestObjects.Comparison;

/// <summary>Gathers what differs from a spec.</summary>
internal sealed class SizeFindings
{
    private readonly List<Finding> findings = [];

    internal IReadOnlyList<Finding> All => findings;

    internal void Require(string feature, double expected, double found)
    {
        if (!(Math.Abs(found - expected) <= SpecComparison.Tolerance))
            Add(
                feature,
                FormattableString.Invariant(
                    $"The mesh has {found:0.0000} mm where the spec gives {expected:0.0000} mm."
                ),
                expected,
                found,
                "mm"
            );
    }

    internal void RequireCount(string feature, int expected, int found)
    {
        if (found != expected)
            Add(feature, $"The mesh has {found} where the spec gives {expected}.", expected, found, "");
    }

    internal void Missing(string feature, double expected) =>
        Add(
            feature,
            FormattableString.Invariant($"The mesh has nothing where the spec gives {expected:0.0000} mm."),
            expected,
            null,
            "mm"
        );

    private void Add(string feature, string message, double expected, double? found, string unit) =>
        findings.Add(
            new Finding(
                "spec-size",
                Severity.Error,
                feature,
                message,
                "Make the mesh again from the spec, or compare with the spec it was made from."
            )
            {
                Value = found,
                Limit = expected,
                Unit = unit,
            }
        );
}
