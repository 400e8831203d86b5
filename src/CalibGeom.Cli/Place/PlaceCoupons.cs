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

    /// <summary>The exposures of a ladder's coupons, s, in the same order; none without a ladder.</summary>
    internal IReadOnlyList<double> Exposures { get; private init; } = [];

    internal static PlaceCoupons Make(SpecSource source, int count, bool labelled, IReadOnlyList<double> exposures)
    {
        if (!labelled)
            return Build(source, [("", source.Spec)]);
        return Build(
            source,
            Enumerable.Range(1, count).Select(i => ($"A{i}", Labelled(source.Spec, Mark(i, exposures))))
        ) with
        {
            Exposures = exposures,
        };
    }

    /// <summary>The exposure of the coupon with a label, s; null without a ladder.</summary>
    internal double? ExposureOf(string label)
    {
        int index = All.ToList().FindIndex(c => c.Label == label);
        return index >= 0 && index < Exposures.Count ? Exposures[index] : null;
    }

    /// <summary>What is raised on a coupon: its label and, on a ladder, its exposure time.</summary>
    private static string Mark(int number, IReadOnlyList<double> exposures) =>
        exposures.Count == 0 ? $"A{number}" : FormattableString.Invariant($"A{number} {exposures[number - 1]:0.00}S");

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
