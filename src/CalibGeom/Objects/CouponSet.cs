using CalibGeom.Plates;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Parts.Labels;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Objects;

/// <summary>
/// Coupons of one spec for a plate: one, or one for each place of a map or step of a ladder with its own label.
/// Immutable and safe to share between threads.
/// </summary>
public sealed class CouponSet
{
    private CouponSet(IReadOnlyList<LabelledCoupon> all, IReadOnlyList<Finding> findings) =>
        (All, Findings) = (all, findings);

    /// <summary>The coupons; none when the design rules found an error.</summary>
    public IReadOnlyList<LabelledCoupon> All { get; }

    /// <summary>What the design rules found.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Whether the design rules found an error; then there are no coupons.</summary>
    public bool HasErrors => Findings.Any(f => f.Severity == Severity.Error);

    /// <summary>One coupon without a label.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="spec">What it is.</param>
    public static CouponSet Of(string name, TestObjectSpec spec) => Of(name, [spec], [""], []);

    /// <summary>Coupons that carry the labels A1, A2 and so on, and on a ladder their exposure time.</summary>
    /// <param name="name">What each of them is called.</param>
    /// <param name="spec">What each of them is, but for the label in its title.</param>
    /// <param name="count">How many, at least 1.</param>
    /// <param name="exposures">The exposures of a ladder, s, one for each; null or none without a ladder.</param>
    /// <exception cref="ArgumentException">The count is below 1, or there are not as many exposures.</exception>
    /// <exception cref="InputException">The title leaves no room for a label.</exception>
    public static CouponSet Of(string name, TestObjectSpec spec, int count, IReadOnlyList<double>? exposures = null)
    {
        ArgumentNullException.ThrowIfNull(spec);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        exposures ??= [];
        if (exposures.Count > 0 && exposures.Count != count)
            throw new ArgumentException(
                FormattableString.Invariant($"{count} coupons need as many exposures; there are {exposures.Count}."),
                nameof(exposures)
            );
        string[] labels = [.. Enumerable.Range(1, count).Select(i => FormattableString.Invariant($"A{i}"))];
        return Of(
            name,
            [.. labels.Select((l, i) => SpecOf(spec, l, exposures.Count > 0 ? exposures[i] : null))],
            labels,
            exposures
        );
    }

    /// <summary>The exposure of the coupon with a label, s; null without a ladder.</summary>
    /// <param name="label">Its label.</param>
    public double? ExposureOf(string label) => All.FirstOrDefault(c => c.Label == label)?.Exposure;

    /// <summary>
    /// The presets as coupons that carry what the first coupon here carries, to see which of them would find room;
    /// those with a fault of the design are left out.
    /// </summary>
    public IEnumerable<Coupon> OtherPresets()
    {
        if (All.Count == 0)
            yield break;
        foreach (Preset preset in Presets.All)
        {
            var made = TestObject.Of(SpecOf(preset.Spec, All[0].Label, All[0].Exposure));
            if (!made.HasErrors)
                yield return new Coupon(preset.Name, made.ToMesh());
        }
    }

    /// <summary>The spec of one coupon, with what is raised on it; labels lengthen the plinth and move parts.</summary>
    /// <exception cref="InputException">The title leaves no room for the label.</exception>
    internal static TestObjectSpec SpecOf(TestObjectSpec spec, string label, double? exposure) =>
        label.Length > 0 ? WithTitle(spec, Mark(label, exposure)) : spec;

    private static CouponSet Of(
        string name,
        IReadOnlyList<TestObjectSpec> specs,
        IReadOnlyList<string> labels,
        IReadOnlyList<double> exposures
    )
    {
        var all = new List<LabelledCoupon>();
        IReadOnlyList<Finding> findings = [];
        for (int i = 0; i < specs.Count; i++)
        {
            TestObject made = TestObject.Of(specs[i]);
            if (made.HasErrors)
                return new CouponSet([], made.Findings);
            if (i == 0)
                findings = made.Findings;
            double? exposure = exposures.Count > 0 ? exposures[i] : null;
            all.Add(new LabelledCoupon(new Coupon(name, made.ToMesh(), made.Features), labels[i], exposure));
        }
        return new CouponSet(all, findings);
    }

    /// <summary>What is raised on a coupon: its label and, on a ladder, its exposure time.</summary>
    private static string Mark(string label, double? exposure) =>
        exposure is { } s ? FormattableString.Invariant($"{label} {s:0.00}S") : label;

    private static TestObjectSpec WithTitle(TestObjectSpec spec, string label)
    {
        string title = spec.Title.Length > 0 ? $"{spec.Title} {label}" : label;
        if (title.Length > 40)
            throw new InputException(
                InputIds.Spec,
                $"The title \"{spec.Title}\" leaves no room for the label {label}; a title has at most 40 "
                    + $"characters. Shorten it."
            );
        return spec with { Title = title, Labels = spec.Labels ?? new LabelsSpec() };
    }
}
