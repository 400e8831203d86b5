using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Trends;

/// <summary>
/// A log cut into segments of one process each: a change of settings or conditions starts a new segment and is never
/// taken for drift. Immutable.
/// </summary>
public sealed class TrendLog
{
    // Common practice, no source: about six months of frequent use, and a vat between 22 and 30 degrees C.
    private const int UseDays = 183;
    private const double UseHours = 200,
        UseLayers = 100_000,
        UseCoupons = 12;

    /// <summary>The lowest vat temperature that is sound, degrees C: 22 (common practice, no source).</summary>
    public const double ColdVat = 22;

    /// <summary>The highest, degrees C: 30 (common practice, no source).</summary>
    public const double HotVat = 30;

    // The first word of what differs where only measuring does, see TrialConditions.DifferencesFrom.
    private const string Measured = "measured";

    // One print at another exposure is a trial; a calibration needs two.
    private const int Calibrates = 2;
    private readonly List<LogEntry> ordered;

    private TrendLog(List<LogEntry> ordered, IReadOnlyList<TrendSegment> segments, TrendSegment current, bool dated)
    {
        this.ordered = ordered;
        Segments = segments;
        Current = current;
        Dated = dated;
    }

    /// <summary>All segments, in order of their first print.</summary>
    public IReadOnlyList<TrendSegment> Segments { get; }

    /// <summary>The segment of the last print.</summary>
    public TrendSegment Current { get; }

    /// <summary>Whether every print has a date; else the order of the file counts.</summary>
    public bool Dated { get; }

    /// <summary>What is odd about the log: dates out of order, dates that are missing.</summary>
    public IReadOnlyList<Finding> Findings { get; private init; } = [];

    /// <summary>Cuts a log into segments.</summary>
    /// <param name="entries">Its prints; those taken back are left out.</param>
    /// <exception cref="InputException">None is left.</exception>
    public static TrendLog Of(IEnumerable<LogEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        LogEntry[] kept = entries.Where(e => !e.TakenBack).ToArray();
        if (kept.Length == 0)
            throw new InputException(InputIds.Question, "The log holds no print. Add the readings of a coupon first.");
        bool dated = kept.All(e => e.Trial.Date is not null);
        LogEntry[] ordered = dated ? kept.OrderBy(e => e.Trial.Date).ToArray() : kept;
        var groups = new List<List<LogEntry>>();
        foreach (LogEntry entry in ordered)
        {
            List<LogEntry>? home = groups.LastOrDefault(g => Belongs(g, entry.Trial));
            if (home is null)
                groups.Add([entry]);
            else
                home.Add(entry);
        }
        TrendSegment[] segments = groups.Select(g => new TrendSegment(g)).ToArray();
        return new TrendLog([.. ordered], segments, segments.Single(s => s.Entries.Contains(ordered[^1])), dated)
        {
            Findings = Odd(kept, ordered, dated),
        };
    }

    /// <summary>
    /// What calls for a new calibration without statistics: a layer height, resin, bottle, film, screen, printer,
    /// orientation or use of grey levels that no earlier print of this state confirms, a vat more than 2 K away, or
    /// about six months of frequent use since the calibration. Parts measured in another state (washed, dry,
    /// post-cured) are kept apart, but the process is the same. The calibration is the first print of this state, or
    /// the first after two or more at other exposures under the same conditions.
    /// </summary>
    /// <param name="months">Months of use; 0 leaves it out. Default 6.</param>
    public IReadOnlyList<TrendTrigger> Triggers(double months = 6)
    {
        Require.Within(months, 0, 1200, "months of use", "", nameof(months));
        var found = new List<TrendTrigger>();
        TrendSegment? before = Segments.LastOrDefault(s => s != Current && s.Entries.Count > 1);
        if (Current.Entries.Count == 1 && before is not null)
            found.AddRange(
                before
                    .DifferencesOf(Current.Reference)
                    .Where(d => Word(d) != Measured)
                    .Select(d => new TrendTrigger($"trend-{Word(d)}", Sentence(d)))
            );
        if (months > 0 && Used(months) is { } used)
            found.Add(used);
        return found;
    }

    private static bool Belongs(List<LogEntry> group, Trial trial)
    {
        Trial first = group[0].Trial;
        return trial.Settings.SameProcess(first.Settings)
            && trial.Conditions.DifferencesFrom(first.Conditions).Count == 0
            && trial.Conditions.Bottle == first.Conditions.Bottle
            && trial.Conditions.Film == first.Conditions.Film
            && trial.Conditions.Screen == first.Conditions.Screen;
    }

    private TrendTrigger? Used(double months)
    {
        Trial[] confirmed = SinceCalibrated();
        if (!Dated || confirmed.Length < 2)
            return null;
        int days = confirmed[^1].Date!.Value.DayNumber - confirmed[0].Date!.Value.DayNumber;
        Trial[] since = confirmed[1..];
        double hours = since.Sum(t => t.HoursSince ?? 0),
            layers = since.Sum(t => (double)(t.LayersSince ?? 0));
        bool noted = since.Any(t => t.HoursSince is not null || t.LayersSince is not null);
        bool frequent = noted ? hours >= UseHours || layers >= UseLayers : confirmed.Length >= UseCoupons;
        return days >= months / 6 * UseDays && frequent
            ? new TrendTrigger(
                "trend-use",
                FormattableString.Invariant(
                    $"The calibration is {days} days old and the machine was used often since (common practice: calibrate anew after about {months:0.#} months of frequent use)."
                )
            )
            : null;
    }

    // Prints at other exposures under the same conditions are a calibration; the next of this state confirms it.
    private Trial[] SinceCalibrated()
    {
        int[] tried =
        [
            .. Segments
                .Where(s => s != Current && s.DifferencesOf(Current.Reference).Count == 0)
                .SelectMany(s => s.Entries)
                .Select(e => ordered.IndexOf(e)),
        ];
        int[] own = [.. Current.Entries.Select(e => ordered.IndexOf(e))];
        int from = 0;
        for (int i = 1; i < own.Length; i++)
            if (tried.Count(t => t > own[i - 1] && t < own[i]) >= Calibrates)
                from = i;
        return [.. Current.Entries.Skip(from).Select(e => e.Trial)];
    }

    private static string Word(string difference) => difference.Split(' ')[0];

    private static string Sentence(string difference) =>
        $"The last print was made with another {(difference.StartsWith("vat", StringComparison.Ordinal) ? "vat temperature: " : "condition: ")}{difference}.";

    private static List<Finding> Odd(LogEntry[] kept, LogEntry[] ordered, bool dated)
    {
        var findings = new List<Finding>();
        if (!dated && kept.Any(e => e.Trial.Date is not null))
            findings.Add(
                new Finding(
                    "trend-no-date",
                    Severity.Note,
                    string.Join(", ", kept.Where(e => e.Trial.Date is null).Select(e => $"print {e.Number}")),
                    "Not every print has a date, so that the order of the log counts and times are numbers of coupons.",
                    ""
                )
            );
        if (dated && !kept.SequenceEqual(ordered))
            findings.Add(
                new Finding(
                    "trend-order",
                    Severity.Note,
                    string.Join(", ", kept.Where((e, i) => ordered[i] != e).Select(e => $"print {e.Number}")),
                    "These prints do not stand in the order of their dates; the dates count.",
                    "If a date is wrong, take the print back and add it again."
                )
            );
        return findings;
    }
}
