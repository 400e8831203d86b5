using System.Globalization;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>Readings of one coupon beside the features they belong to; slips are set aside and said.</summary>
internal sealed class MatchedReadings
{
    /// <summary>Expansion of a steel instrument, 1/K (JCGM 100, H.1).</summary>
    internal const double SteelExpansion = 11.5e-6;

    private MatchedReadings(FeatureTable table, ReadingSet set, List<Finding> findings)
    {
        Table = table;
        Features = table.ToDictionary(f => f.Id);
        Set = set;
        Findings = findings;
    }

    /// <summary>What was designed, under ids without a coupon's label.</summary>
    internal FeatureTable Table { get; }

    internal IReadOnlyDictionary<FeatureId, Feature> Features { get; }

    internal ReadingSet Set { get; }

    internal List<Finding> Findings { get; }

    internal IReadOnlyList<ReadingGroup> Sizes { get; private init; } = [];

    internal IReadOnlyList<ReadingGroup> References { get; private init; } = [];

    internal IReadOnlyList<Reading> Others { get; private init; } = [];

    /// <summary>Part temperature less 20 degrees C, where sizes are corrected for it; 0 elsewhere.</summary>
    internal double Warmth => Set is { Temperature: { } t, Expansion: not null } ? t - 20 : 0;

    internal IReadOnlyList<FeltFit> FitsOf(FeatureId id) =>
        Others.Where(r => r.Id == id && r.Fit is not null).Select(r => r.Fit!.Value).Order().ToArray();

    internal int? CountOf(FeatureId id) => Set.CountOf(id);

    /// <summary>
    /// The same with further readings; those of a feature and instrument that were read already are pooled with them.
    /// </summary>
    internal MatchedReadings With(IEnumerable<ReadingGroup> sizes, IEnumerable<ReadingGroup> references) =>
        new(Table, Set, [])
        {
            Sizes = Pool(Sizes.Concat(sizes)),
            References = Pool(References.Concat(references)),
            Others = Others,
        };

    /// <summary>Matches readings with features.</summary>
    /// <exception cref="InputException">A reading belongs to no feature, or readings belong to several
    /// coupons.</exception>
    internal static MatchedReadings Of(FeatureTable table, ReadingSet set)
    {
        if (set.Coupons.Count > 1)
            throw new InputException(
                InputIds.Question,
                $"The readings belong to several coupons "
                    + $"({string.Join(", ", set.Coupons.Select(c => c.Length > 0 ? c : "none"))}). Predict one "
                    + $"at a time."
            );
        string coupon = set.Coupons.Count == 1 ? set.Coupons[0] : "";
        FeatureTable designed = table.ForCoupon(coupon);
        foreach (Reading r in set.Readings)
            RequireKnown(r, designed);
        List<Finding> findings =
        [
            .. Conditions(table, set),
            .. SlipFinder.Find(set, designed, out HashSet<Reading> aside),
            .. RepeatOutliers.Find(set, aside),
            .. Undeclared(set),
        ];
        double factor = set is { Temperature: { } t, Expansion: { } a } ? 1 - (a - SteelExpansion) * (t - 20) : 1;
        return new MatchedReadings(designed, set, findings)
        {
            Sizes = Group(
                set,
                set.Readings.Where(r => r.Kind == ReadingKind.Size && !r.IsReference && !aside.Contains(r)),
                factor
            ),
            References = Group(set, set.Readings.Where(r => r.IsReference), 1),
            Others = set.Readings.Where(r => r.Kind != ReadingKind.Size).ToArray(),
        };
    }

    /// <summary>Jaw and nominal of <c>reference.outside.10</c>.</summary>
    /// <exception cref="InputException">It is no such id.</exception>
    internal static (Jaw Jaw, double Nominal) ReferenceOf(FeatureId id)
    {
        string[] words = id.Size.Split('.', 2);
        if (
            words.Length == 2
            && ReadingWords.ToJaw(words[0]) is { } jaw
            && double.TryParse(
                words[1],
                NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture,
                out double nominal
            )
            && nominal is > 0 and <= 1000
        )
            return (jaw, nominal);
        throw new InputException(
            InputIds.Question,
            $"{id} is no reference. Write the jaw and the size of the gauge: reference.outside.10 or "
                + $"reference.inside.8."
        );
    }

    private static void RequireKnown(Reading r, FeatureTable features)
    {
        if (r.IsReference)
            _ = ReferenceOf(r.Id);
        else if (features.Find(r.Id) is null)
        {
            string hint = Spelling.Nearest(r.Id, features.Select(f => f.Id.ToString()), 4) is { } near
                ? $" Did you mean {near}?"
                : " Is it another object's?";
            throw new InputException(InputIds.Question, $"{r.At}{r.Feature} is no feature of this object.{hint}");
        }
    }

    private static ReadingGroup[] Group(ReadingSet set, IEnumerable<Reading> readings, double factor) =>
        readings
            .GroupBy(r => (r.Id, r.Instrument, Middle: IsMiddle(r)))
            .OrderBy(g => g.Key.Id)
            .ThenBy(g => g.Key.Instrument, StringComparer.Ordinal)
            .ThenBy(g => g.Key.Middle)
            .Select(g =>
                ReadingGroup.Of(
                    g.Key.Id,
                    set.InstrumentOf(g.Key.Instrument),
                    g.Select(r => r.Value * factor),
                    g.Key.Middle
                )
            )
            .ToArray();

    /// <summary>The word in a note that says the jaws stood away from corners.</summary>
    private static bool IsMiddle(Reading r) => r.Note.Contains("middle", StringComparison.OrdinalIgnoreCase);

    private static ReadingGroup[] Pool(IEnumerable<ReadingGroup> groups) =>
        groups
            .GroupBy(g => (g.Id, g.Instrument.Name, g.Middle))
            .Select(g =>
                g.Skip(1)
                    .Aggregate(
                        g.First(),
                        (a, b) =>
                            a with
                            {
                                Mean = (a.Mean * a.Count + b.Mean * b.Count) / (a.Count + b.Count),
                                Count = a.Count + b.Count,
                                SumOfSquares = a.SumOfSquares + b.SumOfSquares,
                            }
                    )
            )
            .OrderBy(g => g.Id)
            .ThenBy(g => g.Instrument.Name, StringComparer.Ordinal)
            .ToArray();

    /// <summary>Instruments that no header describes: what is assumed of them is said.</summary>
    private static IEnumerable<Finding> Undeclared(ReadingSet set) =>
        set
            .Readings.Where(r => r.Kind == ReadingKind.Size)
            .Select(r => r.Instrument)
            .Distinct(StringComparer.Ordinal)
            .Where(name => !set.Describes(name))
            .Order(StringComparer.Ordinal)
            .Select(name => new Finding(
                "instrument-undeclared",
                Severity.Note,
                name,
                $"No line describes {(name.Length > 0 ? "instrument " + name : "the instrument")}; it is taken for an "
                    + "ordinary caliper of 0.01 mm step and a permissible error of 0.02 mm.",
                $"Write a line such as \"# instrument {(name.Length > 0 ? name : "cal")} resolution=0.01 mpe=0.02\""
                    + (name.Length > 0 ? "." : " and the name in the column instrument.")
            ));

    private static IEnumerable<Finding> Conditions(FeatureTable table, ReadingSet set)
    {
        if (set.Digest is { } read && table.Digest is { } known && read != known)
            yield return new Finding(
                "digest-differs",
                Severity.Warning,
                "",
                $"The readings name digest {read}; the features are those of {known}: another object, or "
                    + $"another version of it.",
                "Use the feature table that was written beside the printed file."
            );
        if (set.State is null)
            yield return new Finding(
                "state-unknown",
                Severity.Note,
                "",
                "The readings do not say whether the part was washed, dry or post-cured.",
                "Add a line such as \"# state post-cured\"."
            );
        if (set.State == PartState.Washed)
            yield return new Finding(
                "still-wet",
                Severity.Note,
                "",
                "The part was measured washed, before it was dry: it may still be swollen, and will change in "
                    + "post-cure.",
                "Predict production parts from readings in the state they are used in."
            );
    }
}
