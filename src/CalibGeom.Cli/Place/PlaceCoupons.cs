using CalibGeom.Cli.Shared;
using CalibGeom.Plates;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Parts.Labels;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Place;

/// <summary>The coupons that <c>place</c> is to set: one, or one for each place of a map with its own label.</summary>
internal sealed record PlaceCoupons(
    SpecSource Source,
    IReadOnlyList<(Coupon Coupon, string Label)> All,
    IReadOnlyList<Finding> Findings
)
{
    /// <summary>Whether the design rules found an error; then there are no coupons.</summary>
    internal bool HasErrors => Findings.Any(f => f.Severity == Severity.Error);

    internal static PlaceCoupons Make(SpecSource source, int count, bool labelled)
    {
        if (!labelled)
            return Build(source, [("", source.Spec)]);
        return Build(source, Enumerable.Range(1, count).Select(i => ($"A{i}", Labelled(source.Spec, $"A{i}"))));
    }

    /// <summary>A coupon of another preset, to see whether it would fit.</summary>
    internal static Coupon? Of(Preset preset)
    {
        TestObject made = TestObjectBuilder.Build(preset.Spec);
        return made.HasErrors ? null : new Coupon(preset.Name, made.ToMesh());
    }

    private static PlaceCoupons Build(SpecSource source, IEnumerable<(string Label, TestObjectSpec Spec)> specs)
    {
        var built = specs.Select(s => (s.Label, Object: TestObjectBuilder.Build(s.Spec))).ToArray();
        IReadOnlyList<Finding> findings = built[0].Object.Findings;
        if (built.FirstOrDefault(b => b.Object.HasErrors).Object is { } faulty)
            return new PlaceCoupons(source, [], faulty.Findings);
        return new PlaceCoupons(
            source,
            built.Select(b => (new Coupon(source.Name, b.Object.ToMesh(), b.Object.Features), b.Label)).ToArray(),
            findings
        );
    }

    private static TestObjectSpec Labelled(TestObjectSpec spec, string label)
    {
        string title = spec.Title.Length > 0 ? $"{spec.Title} {label}" : label;
        if (title.Length > 40)
            throw new InputException(
                $"The title \"{spec.Title}\" leaves no room for the label {label}; a title has at most 40 "
                    + $"characters. Shorten it."
            );
        return spec with { Title = title, Labels = spec.Labels ?? new LabelsSpec() };
    }
}
