using CalibGeom.Cli.Shared;
using CalibGeom.Plates;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Parts.Labels;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Place;

/// <summary>The coupons that <c>place</c> is to set: one, or one for each place of a map with its own label.</summary>
/// <param name="All">The coupons; none when the design rules found an error.</param>
/// <param name="Findings">What the design rules found.</param>
internal sealed record PlaceCoupons(IReadOnlyList<LabelledCoupon> All, IReadOnlyList<Finding> Findings)
{
    /// <summary>Whether the design rules found an error; then there are no coupons.</summary>
    internal bool HasErrors => Findings.Any(f => f.Severity == Severity.Error);

    /// <param name="source">What each of them is.</param>
    /// <param name="count">How many a map has.</param>
    /// <param name="labelled">Whether they are those of a map, and have labels.</param>
    /// <param name="exposures">The exposures of a ladder, s; none without a ladder.</param>
    internal static PlaceCoupons Make(SpecSource source, int count, bool labelled, IReadOnlyList<double> exposures)
    {
        var all = new List<LabelledCoupon>();
        IReadOnlyList<Finding> findings = [];
        for (int i = 1; i <= (labelled ? count : 1); i++)
        {
            string label = labelled ? $"A{i}" : "";
            double? exposure = exposures.Count > 0 ? exposures[i - 1] : null;
            TestObject made = TestObject.Of(labelled ? WithTitle(source.Spec, Mark(label, exposure)) : source.Spec);
            if (made.HasErrors)
                return new PlaceCoupons([], made.Findings);
            if (i == 1)
                findings = made.Findings;
            all.Add(new LabelledCoupon(new Coupon(source.Name, made.ToMesh(), made.Features), label, exposure));
        }
        return new PlaceCoupons(all, findings);
    }

    /// <summary>The exposure of the coupon with a label, s; null without a ladder.</summary>
    internal double? ExposureOf(string label) => All.FirstOrDefault(c => c.Label == label)?.Exposure;

    /// <summary>A coupon of another preset with the same mark, to see whether it would fit.</summary>
    internal static Coupon? Of(Preset preset, LabelledCoupon like)
    {
        TestObject made = TestObject.Of(
            like.Label.Length > 0 ? WithTitle(preset.Spec, Mark(like.Label, like.Exposure)) : preset.Spec
        );
        return made.HasErrors ? null : new Coupon(preset.Name, made.ToMesh());
    }

    /// <summary>What is raised on a coupon: its label and, on a ladder, its exposure time.</summary>
    private static string Mark(string label, double? exposure) =>
        exposure is { } s ? FormattableString.Invariant($"{label} {s:0.00}S") : label;

    private static TestObjectSpec WithTitle(TestObjectSpec spec, string label)
    {
        string title = spec.Title.Length > 0 ? $"{spec.Title} {label}" : label;
        if (title.Length > 40)
            throw new InputException(
                InputIds.Option,
                $"The title \"{spec.Title}\" leaves no room for the label {label}; a title has at most 40 "
                    + $"characters. Shorten it."
            );
        return spec with { Title = title, Labels = spec.Labels ?? new LabelsSpec() };
    }
}
