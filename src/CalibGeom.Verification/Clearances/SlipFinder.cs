using System.Globalization;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>Readings that look like slips of the pen, and what they look like.</summary>
internal static class SlipFinder
{
    internal static IReadOnlyList<Finding> Find(ReadingSet set, FeatureTable features, out HashSet<Reading> aside)
    {
        var findings = new List<Finding>();
        aside = new HashSet<Reading>(ReferenceEqualityComparer.Instance);
        HashSet<string> thousandths = ShowingThousandths(set);
        foreach (Reading r in set.Readings.OrderBy(r => r.Line).ThenBy(r => r.Feature).ThenBy(r => r.Value))
        {
            if (r.IsReference || features.Find(r.Id) is not { } feature)
                continue;
            if (r.Kind == ReadingKind.Count && r.Value > feature.Nominal)
                findings.Add(TooMany(r, feature));
            if (r.Kind != ReadingKind.Size || ClosesWithLight(r.Id))
                continue;
            double off = r.Value - feature.Nominal;
            if (IsEvidence(r.Id) && LooksLike(r, feature, features).Length == 0)
                continue;
            if (IsFar(r.Id, off, feature.Nominal))
            {
                aside.Add(r);
                findings.Add(Far(r, feature, features));
            }
            else if (
                !thousandths.Contains(r.Instrument) && DoubledZero(r, set.InstrumentOf(r.Instrument)) is { } finding
            )
                findings.Add(finding);
        }
        return findings;
    }

    private static bool IsFar(FeatureId id, double off, double nominal) =>
        id == KnownFeatures.BridgeThickness
            ? SlipRules.IsNoBridge(off)
            : Math.Abs(off) > SlipRules.FarShare * Math.Abs(nominal) && Math.Abs(off) > SlipRules.FarMm;

    private static Finding Far(Reading r, Feature feature, FeatureTable features) =>
        new(
            "reading-far-off",
            Severity.Warning,
            r.Feature,
            string.Create(
                    CultureInfo.InvariantCulture,
                    $"{r.At}{r.Value:0.####} mm is {100 * (r.Value / feature.Nominal - 1):+0;-0} % off the "
                        + $"nominal {feature.Nominal:0.####}; it was set aside. {LooksLike(r, feature, features)}"
                )
                .TrimEnd(),
            "Correct it in the file, or measure again."
        )
        {
            Value = r.Value,
            Limit = feature.Nominal,
            Unit = "mm",
        };

    private static string LooksLike(Reading r, Feature feature, FeatureTable features)
    {
        double ratio = r.Value / feature.Nominal;
        foreach (SlipShape shape in SlipRules.Shapes)
            if (Near(ratio, shape.Ratio, shape.Tolerance))
                return shape.Text;
        if (
            Partner(r.Id) is { } partner
            && features.Find(partner) is { } other
            && Near(r.Value / other.Nominal, 1, SlipRules.SameTolerance)
        )
            return $"It looks like {partner}: were inside and outside swapped?";
        Feature? same = features
            .Where(f => f.Unit == "mm" && f.Axis == feature.Axis && f.Nominal > 0)
            .OrderBy(f => Math.Abs(r.Value - f.Nominal))
            .ThenBy(f => f.Id)
            .FirstOrDefault();
        return same is not null && Near(r.Value / same.Nominal, 1, SlipRules.SameTolerance)
            ? $"It looks like {same.Id}."
            : "";
    }

    private static FeatureId? Partner(FeatureId id) =>
        id.Size switch
        {
            KnownFeatures.Inside => id.With(KnownFeatures.Outside, id.Axis),
            KnownFeatures.Outside => id.With(KnownFeatures.Inside, id.Axis),
            _ => null,
        };

    /// <summary>
    /// Instruments that nobody described and that gave a size finer than hundredths that no doubled zero explains.
    /// </summary>
    private static HashSet<string> ShowingThousandths(ReadingSet set) =>
        set
            .Readings.Where(r =>
                r.Kind == ReadingKind.Size
                && !set.Describes(r.Instrument)
                && Math.Abs(r.Value * 100 - Math.Round(r.Value * 100)) > 1e-6
                && r.Value - Math.Floor(r.Value) >= 0.0095
            )
            .Select(r => r.Instrument)
            .ToHashSet(StringComparer.Ordinal);

    /// <summary>8.005 from an instrument that shows hundredths: 8.05 with a zero too many?</summary>
    private static Finding? DoubledZero(Reading r, Instrument instrument)
    {
        double thousandths = r.Value * 1000,
            whole = Math.Round(thousandths);
        if (Math.Abs(thousandths - whole) > 1e-6 || instrument.Resolution < SlipRules.FinestHundredths)
            return null;
        long digits = (long)whole % 1000;
        if (digits is < 1 or > 9)
            return null;
        double meant = Math.Floor(r.Value) + digits / 100.0;
        return new Finding(
            "doubled-zero",
            Severity.Note,
            r.Feature,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{r.At}{r.Value:0.000} mm is finer than a step of {instrument.Resolution:0.###} mm. Was it "
                    + $"{meant:0.00}?"
            ),
            "Correct it in the file if a zero was doubled."
        )
        {
            Value = r.Value,
            Unit = "mm",
        };
    }

    private static Finding TooMany(Reading r, Feature feature) =>
        new(
            "count-too-high",
            Severity.Warning,
            r.Feature,
            Say($"{r.At}{r.Value} were counted; the object has {feature.Nominal}. The count was set aside."),
            "Count again."
        )
        {
            Value = r.Value,
            Limit = feature.Nominal,
            Unit = "count",
        };

    /// <summary>Tunnels and slots lose much of their height to print-through; that is what they are for.</summary>
    private static bool ClosesWithLight(FeatureId id) =>
        id is { Part: KnownFeatures.Slot or KnownFeatures.Squeeze, Size: KnownFeatures.Height };

    /// <summary>A plinth far from its thickness was squeezed or lifted: that is what it is read for.</summary>
    private static bool IsEvidence(FeatureId id) => id == KnownFeatures.PlinthThickness;

    private static bool Near(double value, double expected, double tolerance) =>
        Math.Abs(value / expected - 1) <= tolerance;

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
