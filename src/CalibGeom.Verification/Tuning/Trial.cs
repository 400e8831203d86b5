namespace CalibGeom.Verification.Tuning;

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

    /// <summary>Base layers, their exposure and the time around every exposure.</summary>
    public LayerCycle Cycle { get; init; } = new();

    /// <summary>Growth per edge along X, or null when it was not measured.</summary>
    public GrowthReading? GrowthX { get; init; }

    /// <summary>Growth per edge along Y, or null.</summary>
    public GrowthReading? GrowthY { get; init; }

    /// <summary>The caliper's name: prints measured with one caliper share its bias.</summary>
    public string Instrument { get; init; } = "";

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
}
