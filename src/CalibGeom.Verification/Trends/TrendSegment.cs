using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Trends;

/// <summary>Prints of one process: the same settings, under the same conditions. Immutable.</summary>
public sealed class TrendSegment
{
    internal TrendSegment(IReadOnlyList<LogEntry> entries)
    {
        Entries = entries;
        var read = entries
            .Select(e => (Values: CouponValues.Of(e.Trial, out IReadOnlySet<Gauge> bounds), bounds))
            .ToArray();
        // What no print of the segment measures, but its counts only bound, says nothing of change.
        bool IsCount(GaugeValue v, Gauge g) => v.Counted && v.Gauge == g;
        var useless = Enum.GetValues<Gauge>()
            .Where(g =>
                read.Where(r => r.Values.Any(v => IsCount(v, g))).All(r => r.bounds.Contains(g))
                && Alike(read.SelectMany(r => r.Values).Where(v => IsCount(v, g)))
            )
            .ToHashSet();
        GaugeValue? comb = null;
        GaugeValue? Told(GaugeValue value)
        {
            if (value is not { Gauge: Gauge.PrintThrough, Counted: true })
                return value;
            GaugeValue? told = CouponValues.After(comb, value);
            comb = value;
            return told;
        }
        Read = entries
            .Select(
                (e, i) => new TrendPoint(read[i].Values, e.Trial.Date, FormattableString.Invariant($"print {e.Number}"))
            )
            .ToArray();
        Points = entries
            .Select(
                (e, i) =>
                    new TrendPoint(
                        read[i]
                            .Values.Where(v => !(v.Counted && useless.Contains(v.Gauge)))
                            .Select(Told)
                            .OfType<GaugeValue>()
                            .ToArray(),
                        e.Trial.Date,
                        FormattableString.Invariant($"print {e.Number}")
                    )
            )
            .ToArray();
    }

    /// <summary>The prints with their numbers in the log, in order of time.</summary>
    public IReadOnlyList<LogEntry> Entries { get; }

    /// <summary>What they say.</summary>
    public IReadOnlyList<TrendPoint> Points { get; }

    /// <summary>
    /// What each print read by itself, before what is no news beside the print before it was left out of
    /// <see cref="Points"/>.
    /// </summary>
    public IReadOnlyList<TrendPoint> Read { get; }

    /// <summary>The first print, whose conditions the others share.</summary>
    public Trial Reference => Entries[0].Trial;

    /// <summary>What sets a print apart from this segment, in words; empty when it belongs to it.</summary>
    /// <param name="trial">A print.</param>
    public IReadOnlyList<string> DifferencesOf(Trial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        var differences = trial.Conditions.DifferencesFrom(Reference.Conditions).ToList();
        void Say(string what, string here, string there)
        {
            if (here != there)
                differences.Add($"{what} '{here}' instead of '{there}'");
        }
        Say("bottle", trial.Conditions.Bottle, Reference.Conditions.Bottle);
        Say("film", trial.Conditions.Film, Reference.Conditions.Film);
        Say("screen", trial.Conditions.Screen, Reference.Conditions.Screen);
        return differences;
    }

    private static bool Alike(IEnumerable<GaugeValue> values) =>
        values.Select(v => Math.Round(v.Value, 9)).Distinct().Count() < 2;
}
