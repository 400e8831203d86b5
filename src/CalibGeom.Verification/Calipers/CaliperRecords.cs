using System.Globalization;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Calipers;

/// <summary>Puts caliper records to work: their gauges count as references of the readings that name them.</summary>
public static class CaliperRecords
{
    /// <summary>A study with fewer degrees of freedom does not replace what repeats themselves say.</summary>
    private const int EnoughFreedom = 20;

    /// <summary>
    /// The readings with the gauges of the records that their instruments name, and with the repeatability of a study
    /// where the instrument's line states none.
    /// </summary>
    /// <param name="readings">The readings.</param>
    /// <param name="load">Finds a record by the name in the readings file.</param>
    /// <exception cref="InputException">A record cannot be used.</exception>
    public static ReadingSet Attach(ReadingSet readings, Func<string, CaliperRecord> load)
    {
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(load);
        if (readings.Instruments.All(i => i.RecordFile is null))
            return readings;
        var more = new List<Reading>();
        var instruments = new List<Instrument>();
        foreach (Instrument instrument in readings.Instruments)
        {
            CaliperRecord? record = instrument.RecordFile is { } file ? load(file) : null;
            instruments.Add(record is null ? instrument : Known(instrument, record));
            foreach (CaliperReading r in record?.Gauges ?? [])
                more.Add(
                    Reading.Size(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"reference.{ReadingWords.Of(r.Jaw)}.{r.Gauge!.Value}"
                        ),
                        r.Value,
                        instrument.Name
                    )
                );
        }
        return new ReadingSet(
            readings.Readings.Concat(more),
            instruments,
            readings.Digest,
            readings.Temperature,
            readings.State,
            readings.Expansion,
            readings.Material,
            readings.Comments
        );
    }

    /// <summary>What is said of a record's age.</summary>
    /// <param name="file">Its file, as readings name it.</param>
    /// <param name="record">The record.</param>
    /// <param name="today">The day.</param>
    /// <returns>A finding, or null when it is young enough.</returns>
    public static Finding? Age(string file, CaliperRecord record, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(record);
        if (!record.IsOld(today))
            return null;
        string last = record.LastGauge is { } day
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"its last gauge was read on {day:yyyy-MM-dd}, over {record.ValidDays} days ago"
            )
            : "it holds no gauge";
        return new Finding(
            "caliper-record-old",
            Severity.Warning,
            file,
            $"The caliper record is old: {last}. It was used all the same.",
            "Read the gauges again and add the rows with today's date."
        );
    }

    private static Instrument Known(Instrument i, CaliperRecord record) =>
        i.Repeatability is null && record.Study is { } s && s.DegreesOfFreedom >= EnoughFreedom
            ? new Instrument(
                i.Name,
                i.Resolution,
                i.OutsideError,
                i.InsideError,
                i.DepthError,
                s.Together,
                i.Jaw,
                i.Variation
            )
            {
                RecordFile = i.RecordFile,
            }
            : i;
}
