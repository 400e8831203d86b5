using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Logs;

/// <summary>
/// Fills what a person left out: first from the object's process, then from the last trial. Not safe to share between
/// threads; no one is handed out.
/// </summary>
internal sealed class EntryFiller
{
    private readonly TrialEntry said;
    private readonly ProcessFacts process;
    private readonly Trial? last;
    private readonly List<string> taken = [];

    private EntryFiller(TrialEntry said, ProcessFacts process, Trial? last) =>
        (this.said, this.process, this.last) = (said, process, last);

    /// <summary>The print with all its settings.</summary>
    /// <param name="said">What was said.</param>
    /// <param name="process">What the object's spec says.</param>
    /// <param name="state">What had been done to the part when it was measured; null when the readings do not
    /// say.</param>
    /// <param name="last">The last trial of the log that holds, or null.</param>
    /// <exception cref="InputException">Exposure or rest is not known, or a value is out of range.</exception>
    public static FilledEntry Fill(TrialEntry said, ProcessFacts process, PartState? state, Trial? last)
    {
        ArgumentNullException.ThrowIfNull(said);
        ArgumentNullException.ThrowIfNull(process);
        try
        {
            return new EntryFiller(said, process, last).Fill(state);
        }
        catch (ArgumentException e)
        {
            throw InputException.Because(InputIds.Log, e);
        }
    }

    private FilledEntry Fill(PartState? state)
    {
        LayerCycle ordinary = new();
        var settings = new ExposureSettings(
            Number(said.Time, null, t => t.Settings.Time, "exposure", "s") ?? throw Missing("exposure"),
            Number(said.Rest, null, t => t.Settings.Rest, "rest", "s") ?? throw Missing("rest"),
            Number(said.EdgeOffset, null, t => t.Settings.EdgeOffset, "edge offset", "mm", quiet: 0) ?? 0
        );
        var cycle = new LayerCycle(
            (int)(
                Number(
                    said.BaseLayers,
                    process.BaseLayers,
                    t => t.Cycle.BaseLayers,
                    "base layers",
                    "",
                    ordinary.BaseLayers
                ) ?? ordinary.BaseLayers
            ),
            Number(said.BaseTime, process.BaseTime, t => t.Cycle.BaseTime, "base exposure", "s", ordinary.BaseTime)
                ?? ordinary.BaseTime,
            Number(said.Lift, null, t => t.Cycle.Lift, "lift", "s", ordinary.Lift) ?? ordinary.Lift
        );
        var scale = new SlicerScale(
            Number(said.ScaleX, null, t => t.Scale.X, "scale along X", "", quiet: 1) ?? 1,
            Number(said.ScaleY, null, t => t.Scale.Y, "scale along Y", "", quiet: 1) ?? 1
        );
        return new FilledEntry(settings, Conditions(state), cycle, taken)
        {
            Scale = scale,
            Pixel = process.Pixel ?? Taken(t => t.Pixel, p => p is { } pitch ? $"pixel {pitch} mm" : null),
        };
    }

    private TrialConditions Conditions(PartState? state) =>
        new(
            Number(said.Layer, process.Layer, t => t.Conditions.Layer, "layer", "mm", ProcessDefaults.LayerHeight)
                ?? ProcessDefaults.LayerHeight,
            Word(said.Resin, t => t.Conditions.Resin, "resin"),
            Word(said.Printer, t => t.Conditions.Printer, "printer"),
            state ?? PartState.Dry,
            said.GreyLevels ?? Taken(t => t.Conditions.GreyLevels, on => on ? "grey levels on" : null),
            said.Orientation ?? Taken(t => t.Conditions.Orientation, deg => deg != 0 ? $"turned {deg} degrees" : null),
            said.TemperatureStart,
            said.TemperatureEnd
        )
        {
            Bottle = Word(said.Bottle, t => t.Conditions.Bottle, "bottle"),
            Film = Word(said.Film, t => t.Conditions.Film, "film"),
            Screen = Word(said.Screen, t => t.Conditions.Screen, "screen"),
        };

    /// <summary>A number from the nearest source; what equals <paramref name="quiet"/> is not worth saying.</summary>
    private double? Number(
        double? given,
        double? known,
        Func<Trial, double> before,
        string what,
        string unit,
        double? quiet = null
    )
    {
        if ((given ?? known) is { } sure)
            return sure;
        if (last is null)
            return null;
        double value = before(last);
        if (value != quiet)
            taken.Add(FormattableString.Invariant($"{what} {value} {unit}").TrimEnd());
        return value;
    }

    private string Word(string? given, Func<Trial, string> before, string what) =>
        given ?? Taken(before, word => word.Length > 0 ? $"{what} {word}" : null) ?? "";

    private T? Taken<T>(Func<Trial, T> before, Func<T, string?> say)
    {
        if (last is null)
            return default;
        T value = before(last);
        if (say(value) is { } words)
            taken.Add(words);
        return value;
    }

    private static InputException Missing(string what) =>
        new(
            InputIds.Log,
            $"The {what} is not known: the log has no trial yet to take it from. Say what was set, in seconds."
        );
}
