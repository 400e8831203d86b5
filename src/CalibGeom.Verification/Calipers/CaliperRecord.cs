namespace CalibGeom.Verification.Calipers;

/// <summary>
/// What is known of one caliper from reading gauges at several lengths and days, and from a repeatability study.
/// Immutable.
/// </summary>
public sealed class CaliperRecord
{
    /// <summary>For how many days a record counts when it does not say.</summary>
    public const int DefaultValidDays = 365;

    /// <summary>A record.</summary>
    /// <param name="readings">Its readings, at least one.</param>
    /// <param name="name">The caliper's name; may be empty.</param>
    /// <param name="validDays">For how many days after the last gauge it counts, 1 to 10000.</param>
    /// <exception cref="ArgumentException">There is no reading, or the days are out of range.</exception>
    public CaliperRecord(IEnumerable<CaliperReading> readings, string name = "", int validDays = DefaultValidDays)
    {
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(name);
        Readings = readings.ToArray();
        if (Readings.Count == 0)
            throw new ArgumentException("A caliper record needs one reading at least.", nameof(readings));
        Name = name;
        ValidDays = (int)Require.Within(validDays, 1, 10_000, "validity", "days", nameof(validDays));
    }

    /// <summary>The readings.</summary>
    public IReadOnlyList<CaliperReading> Readings { get; }

    /// <summary>The caliper's name; may be empty.</summary>
    public string Name { get; }

    /// <summary>For how many days after the last gauge it counts.</summary>
    public int ValidDays { get; }

    /// <summary>The readings of gauges.</summary>
    public IEnumerable<CaliperReading> Gauges => Readings.Where(r => r.Gauge is not null);

    /// <summary>The last day on which a gauge was read; null when none was.</summary>
    public DateOnly? LastGauge => Gauges.Any() ? Gauges.Max(r => r.Date) : null;

    /// <summary>Each jaw that read gauges: what is constant, and what changes along the scale.</summary>
    public IReadOnlyList<JawCheck> Jaws =>
        Gauges.GroupBy(r => r.Jaw).OrderBy(g => g.Key).Select(g => JawCheck.Of(g.Key, g.ToArray())).ToArray();

    /// <summary>The repeatability study; null when its parts, persons and rounds make none.</summary>
    public RepeatabilityStudy? Study => RepeatabilityStudy.Of(Readings.Where(r => r.Part.Length > 0).ToArray());

    /// <summary>Whether a record is too old on a day.</summary>
    /// <param name="today">The day.</param>
    public bool IsOld(DateOnly today) => LastGauge is not { } last || today > last.AddDays(ValidDays);
}
