using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Logs;

/// <summary>
/// A print that is to be added to a log: what was said and read, with all that was left out filled in, and what to ask
/// before it is added. Immutable.
/// </summary>
public sealed record NewTrial
{
    private NewTrial() { }

    /// <summary>The trial, ready for <see cref="TrialLog.Append(string, Func{TrialLog, Trial})"/>.</summary>
    public required Trial Trial { get; init; }

    /// <summary>What nobody said and was taken from the last trial, as words such as <c>rest 0.5 s</c>.</summary>
    public required IReadOnlyList<string> Taken { get; init; }

    /// <summary>What makes one ask before it is added (<see cref="TrialDoubts"/>); none when all is likely.</summary>
    public required IReadOnlyList<Finding> Doubts { get; init; }

    /// <summary>What is odd about the readings themselves; nothing that stands in the way.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>
    /// Puts it together: settings from what was said, then from the object's process, then from the log's last trial.
    /// </summary>
    /// <param name="log">The log it is meant for.</param>
    /// <param name="said">What a person says of the print.</param>
    /// <param name="table">What was designed: the feature table of the test object that was printed.</param>
    /// <param name="readings">What was read, of one coupon.</param>
    /// <param name="process">What the object's spec says of printing. Default: nothing.</param>
    /// <param name="place">Where on the plate the coupon stood. Default: not known.</param>
    /// <exception cref="InputException">Exposure or rest is not known, a value is out of range, nothing in the readings
    /// speaks of exposure, or they do not belong to this object.</exception>
    public static NewTrial Of(
        TrialLog log,
        TrialEntry said,
        FeatureTable table,
        ReadingSet readings,
        ProcessFacts? process = null,
        PlateSpot? place = null
    )
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(said);
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(readings);
        FilledEntry filled = EntryFiller.Fill(
            said,
            process ?? new ProcessFacts(),
            readings.State,
            log.Trials.LastOrDefault()
        );
        Trial trial = TrialReadings.ToTrial(table, readings, filled.Settings, filled.Conditions) with
        {
            Cycle = filled.Cycle,
            Scale = filled.Scale,
            Pixel = filled.Pixel,
            Date = said.Date,
            Place = place,
            LayersSince = said.LayersSince,
            HoursSince = said.HoursSince,
        };
        return new NewTrial
        {
            Trial = trial,
            Taken = filled.Taken,
            Doubts = TrialDoubts.Check(trial, log),
            Findings = TrialReadings.FindingsOf(table, readings),
        };
    }
}
