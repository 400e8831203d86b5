namespace CalibGeom.Verification.Logs;

/// <summary>
/// One print of the test object: what was set, under what conditions, and what came of it. Immutable.
/// </summary>
public sealed record Trial
{
    /// <summary>A trial.</summary>
    /// <param name="settings">What was set.</param>
    /// <param name="conditions">The conditions.</param>
    public Trial(ExposureSettings settings, TrialConditions conditions)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(conditions);
        Settings = settings;
        Conditions = conditions;
    }

    /// <summary>What was set.</summary>
    public ExposureSettings Settings { get; }

    /// <summary>The conditions.</summary>
    public TrialConditions Conditions { get; }

    /// <summary>The day of the print, or null.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>The digest of the object that was printed (16 hex digits), or null.</summary>
    public string? Digest { get; init; }

    /// <summary>Where on the plate it stood, or null when that is not known.</summary>
    public PlateSpot? Place { get; init; }

    /// <summary>How many layers the machine has printed since the trial before, 0 to 100,000,000, or null.</summary>
    /// <exception cref="ArgumentException">Out of range.</exception>
    public int? LayersSince
    {
        get;
        init =>
            field = value is { } layers
                ? (int)Require.Within(layers, 0, 1e8, "number of layers since", "layers", nameof(LayersSince))
                : null;
    }

    /// <summary>How many hours the machine has printed since the trial before, 0 to 100,000, or null.</summary>
    /// <exception cref="ArgumentException">Out of range.</exception>
    public double? HoursSince
    {
        get;
        init =>
            field = value is { } hours
                ? Require.Within(hours, 0, 1e5, "number of hours since", "h", nameof(HoursSince))
                : null;
    }

    /// <summary>Base layers, their exposure and the time around every exposure.</summary>
    public LayerCycle Cycle { get; init; } = new();

    /// <summary>Growth per edge along X, or null when it was not measured.</summary>
    public GrowthReading? GrowthX { get; init; }

    /// <summary>Growth per edge along Y, or null.</summary>
    public GrowthReading? GrowthY { get; init; }

    /// <summary>The scale typed in the slicer.</summary>
    public SlicerScale Scale { get; init; } = SlicerScale.None;

    /// <summary>The pixel pitch along X and Y in mm, 0.005 to 0.5, or null when nobody knows it.</summary>
    /// <exception cref="ArgumentException">Out of range.</exception>
    public PerAxis? Pixel
    {
        get;
        init => field = PixelPitch.Require(value, nameof(Pixel));
    }

    /// <summary>Proportional change of all sizes along X, or null when the readings do not tell it.</summary>
    public ScaleReading? ScaleX { get; init; }

    /// <summary>The same along Y.</summary>
    public ScaleReading? ScaleY { get; init; }

    /// <summary>The caliper's name: prints measured with one caliper share its bias.</summary>
    /// <exception cref="ArgumentException">It is not of one line.</exception>
    public string Instrument
    {
        get;
        init => field = Require.OneLine(value, "instrument", nameof(Instrument));
    } = "";

    /// <summary>The joints.</summary>
    public IReadOnlyList<JointOutcome> Joints { get; init; } = [];

    /// <summary>The thin columns.</summary>
    public IReadOnlyList<ColumnOutcome> Columns { get; init; } = [];

    /// <summary>The slot comb, or null.</summary>
    public SlotOutcome? Slots { get; init; }

    /// <summary>
    /// The readings the growths come from, kept for the record: values by feature id, repeats in order.
    /// </summary>
    public IReadOnlyDictionary<string, IReadOnlyList<double>> Readings { get; init; } =
        new Dictionary<string, IReadOnlyList<double>>();

    /// <summary>The designed sizes of what was read, mm by feature id.</summary>
    public IReadOnlyDictionary<string, double> Nominals { get; init; } = new Dictionary<string, double>();

    // A gauge that was read once more makes no other print.
    private IEnumerable<KeyValuePair<string, IReadOnlyList<double>>> OfThePrint =>
        Readings.Where(r => FeatureId.TryParse(r.Key) is not { Part: KnownFeatures.Reference });

    /// <summary>
    /// Whether another trial carries the very same readings of a print: sizes, fits, columns and slots. References do
    /// not count.
    /// </summary>
    /// <param name="other">Another trial.</param>
    public bool HasSameReadings(Trial other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Columns.SequenceEqual(other.Columns)
            && Joints.SequenceEqual(other.Joints)
            && Slots?.Open == other.Slots?.Open
            && (Slots?.Heights ?? []).SequenceEqual(other.Slots?.Heights ?? [])
            && OfThePrint.Count() == other.OfThePrint.Count()
            && OfThePrint.All(r =>
                other.Readings.TryGetValue(r.Key, out IReadOnlyList<double>? same) && r.Value.SequenceEqual(same)
            );
    }
}
