using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Logs;

/// <summary>From the readings of a print to a trial.</summary>
public static class TrialReadings
{
    /// <summary>
    /// A trial with the growths that the readings show, split into what belongs to this print and what its instruments
    /// share with others, and with fits, columns and slots.
    /// </summary>
    /// <param name="table">What was designed: the feature table of the test object that was printed.</param>
    /// <param name="readings">What was read.</param>
    /// <param name="settings">What was set.</param>
    /// <param name="conditions">The conditions.</param>
    /// <exception cref="InputException">Nothing in the readings speaks of exposure, or they do not belong to this
    /// object.</exception>
    public static Trial ToTrial(
        FeatureTable table,
        ReadingSet readings,
        ExposureSettings settings,
        TrialConditions conditions
    )
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(readings);
        RequireOneObject(table, readings);
        FeatureTable designed = table.ForCoupon(readings.Coupons.FirstOrDefault(""));
        Dictionary<string, AxisGrowth> growths = Growths(table, readings);
        Trial trial = new(settings, conditions)
        {
            Digest = table.Digest,
            GrowthX = Growth(growths.GetValueOrDefault("x")),
            GrowthY = Growth(growths.GetValueOrDefault("y")),
            ScaleX = Scale(growths.GetValueOrDefault("x")),
            ScaleY = Scale(growths.GetValueOrDefault("y")),
            Instrument = string.Join(
                '+',
                Sized(readings)
                    .Select(r => r.Instrument)
                    .Where(n => n.Length > 0)
                    .Distinct(StringComparer.Ordinal)
                    .Order(StringComparer.Ordinal)
            ),
            Joints = designed.Where(f => f.Mates.Count > 0).Select(f => Joint(f, Last(readings, f.Id)?.Fit)).ToArray(),
            Columns = designed.Select(f => Column(designed, f, readings)).OfType<ColumnOutcome>().ToArray(),
            Slots =
                designed.Find(KnownFeatures.SlotsOpen) is { Openings.Count: > 0 } slots
                && readings.CountOf(KnownFeatures.SlotsOpen) is { } open
                    ? Comb(slots.Openings, open)
                    : null,
            Readings = readings
                .Readings.Where(r => r.Kind == ReadingKind.Size || r.Id == KnownFeatures.SqueezeOpen)
                .GroupBy(r => r.Id.ToString(), StringComparer.Ordinal)
                .ToDictionary(
                    g => g.Key,
                    g => (IReadOnlyList<double>)g.Select(r => r.Value).ToArray(),
                    StringComparer.Ordinal
                ),
            Nominals = Sized(readings)
                .Select(r => designed.Find(r.Id))
                .OfType<Feature>()
                .DistinctBy(f => f.Id)
                .ToDictionary(f => f.Id.ToString(), f => f.Nominal, StringComparer.Ordinal),
        };
        if (
            trial.GrowthX is null
            && trial.GrowthY is null
            && trial.Columns.Count == 0
            && trial.Slots is null
            && trial.Joints.All(j => j.Fit is null)
            && BridgeReading.Of(trial) is null
        )
            throw new InputException(
                InputIds.Log,
                "Nothing in these readings speaks of exposure: read box widths, felt fits, columns, slots "
                    + "or the bridge of this object."
            );
        return trial;
    }

    /// <summary>
    /// What is odd about the readings themselves: slips of the pen, readings that were set aside, a state that nobody
    /// wrote down.
    /// </summary>
    /// <param name="table">What was designed: the feature table of the test object that was printed.</param>
    /// <param name="readings">What was read.</param>
    /// <exception cref="InputException">They do not belong to this object.</exception>
    internal static IReadOnlyList<Finding> FindingsOf(FeatureTable table, ReadingSet readings)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(readings);
        RequireOneObject(table, readings);
        if (!Sized(readings).Any())
            return [];
        string[] ofThePrediction = ["axis-not-measured", "scale-assumed"];
        return ClearancePrediction.Of(table, readings).Findings.Where(f => !ofThePrediction.Contains(f.Rule)).ToArray();
    }

    /// <summary>Readings of one coupon that its growths leave out, under its own ids.</summary>
    /// <exception cref="InputException">They do not belong to this object.</exception>
    internal static IEnumerable<Finding> LeftOut(FeatureTable table, ReadingSet readings)
    {
        string coupon = readings.Coupons.FirstOrDefault("");
        return AxisGrowth
            .LeftOut(table, Sizes(readings), OfThePrint)
            .Select(f => f with { Subject = FeatureId.TryParse(f.Subject)?.On(coupon).ToString() ?? f.Subject });
    }

    private static void RequireOneObject(FeatureTable table, ReadingSet readings)
    {
        if (readings.Digest is { } read && table.Digest is { } known && read != known)
            throw new InputException(
                InputIds.Log,
                $"The readings name digest {read}, but the object has {known}: another object, or another "
                    + $"version of it. Name the spec or preset that was printed."
            );
        if (readings.Coupons.Count > 1)
            throw new InputException(
                InputIds.Log,
                $"The readings are of several coupons "
                    + $"({string.Join(", ", readings.Coupons.Select(c => c.Length > 0 ? c : "none"))}). Add one "
                    + $"at a time."
            );
    }

    private static IEnumerable<Reading> Sized(ReadingSet readings) =>
        readings.Readings.Where(r => r.Kind == ReadingKind.Size);

    // Without the deviation between prints, which the trials of a log teach by themselves.
    private static readonly PredictionOptions OfThePrint = new() { BetweenPrints = 0 };

    private static Dictionary<string, AxisGrowth> Growths(FeatureTable table, ReadingSet readings) =>
        Sized(readings).Any()
            ? AxisGrowth.Of(table, Sizes(readings), OfThePrint).ToDictionary(a => a.Axis, StringComparer.Ordinal)
            : [];

    // Felt fits stay out: the trial carries them itself, and they must not count twice.
    private static ReadingSet Sizes(ReadingSet r) =>
        new(
            r.Readings.Where(x => x.Kind == ReadingKind.Size),
            r.Readings.Select(x => x.Instrument).Distinct(StringComparer.Ordinal).Select(r.InstrumentOf),
            r.Digest,
            r.Temperature,
            r.State,
            r.Expansion,
            // What soft material gives is alike in every print: it is no news of the settings.
            r.Material
                ?? Material.Rigid,
            r.Comments
        );

    private static GrowthReading? Growth(AxisGrowth? axis) =>
        axis is null
            ? null
            : new GrowthReading(
                Round(axis.Value),
                Math.Max(1e-6, Round(axis.OwnUncertainty)),
                Round(axis.SharedUncertainty)
            );

    private static ScaleReading? Scale(AxisGrowth? axis) =>
        axis is null or { ScaleAssumed: true }
            ? null
            : new ScaleReading(Math.Round(axis.Scale, 7) + 0.0, Math.Max(1e-7, Math.Round(axis.ScaleUncertainty, 7)));

    /// <summary>A joint that has faces along one axis only is free along the other.</summary>
    private static JointOutcome Joint(Feature fit, FeltFit? felt)
    {
        double Along(string axis) => fit.Mates.FirstOrDefault(m => m.Axis == axis, fit.Mates[0]).Clearance;
        return new JointOutcome(fit.Id.Item, Round(Along("x")), felt, Round(Along("y")));
    }

    /// <summary>What became of a column whose stage was written down; null for anything else.</summary>
    private static ColumnOutcome? Column(FeatureTable designed, Feature stood, ReadingSet readings) =>
        stood.Unit == "stage"
        && designed.Find(stood.Id.With(KnownFeatures.Diameter)) is { } column
        && Last(readings, stood.Id)?.Stage is { } stage
            ? new ColumnOutcome(column.Nominal, stage, stood.Id.Item, column.HeadDiameter ?? column.Nominal)
            : null;

    private static SlotOutcome Comb(IReadOnlyList<double> heights, int open) =>
        open <= heights.Count
            ? new SlotOutcome(heights, open)
            : throw new InputException(
                InputIds.Log,
                $"slots.open is {open}, but the object has {heights.Count} slots. Count again, or name "
                    + $"the spec that was printed."
            );

    private static Reading? Last(ReadingSet readings, FeatureId id) => readings.Readings.LastOrDefault(r => r.Id == id);

    // Without a minus before a zero.
    private static double Round(double mm) => Math.Round(mm, 6) + 0.0;
}
