using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Logs;

/// <summary>What must be alike before two prints speak of the same process. Immutable.</summary>
public sealed record TrialConditions
{
    /// <summary>How far vat temperatures may differ in kelvin: 2.</summary>
    public const double TemperatureBand = 2;

    /// <summary>Conditions.</summary>
    /// <param name="layer">Layer height in mm, above 0 and at most 1.</param>
    /// <param name="resin">The resin's name, or empty.</param>
    /// <param name="printer">The printer's name, or empty.</param>
    /// <param name="state">What had been done to the part when it was measured. Default washed and dry.</param>
    /// <param name="greyLevels">Whether the slicer wrote grey-level edges. Default no.</param>
    /// <param name="orientation">How the object lay, in degrees about Z: 0 or 90. Default 0.</param>
    /// <param name="temperatureStart">Vat temperature at the start, degrees C, -20 to 100, or null.</param>
    /// <param name="temperatureEnd">Vat temperature at the end, degrees C, or null.</param>
    /// <exception cref="ArgumentException">A value is out of range, or a name not of one line.</exception>
    public TrialConditions(
        double layer,
        string resin = "",
        string printer = "",
        PartState state = PartState.Dry,
        bool greyLevels = false,
        int orientation = 0,
        double? temperatureStart = null,
        double? temperatureEnd = null
    )
    {
        if (orientation is not (0 or 90))
            throw new ArgumentException(
                $"The orientation must be 0 or 90 degrees, not {orientation}.",
                nameof(orientation)
            );
        if (!Enum.IsDefined(state))
            throw new ArgumentException($"There is no state {state}.", nameof(state));
        Layer = Require.Positive(layer, 1, "layer height", "mm", nameof(layer));
        Resin = Require.OneLine(resin, "resin", nameof(resin));
        Printer = Require.OneLine(printer, "printer", nameof(printer));
        State = state;
        GreyLevels = greyLevels;
        Orientation = orientation;
        if (temperatureStart is { } start)
            TemperatureStart = Require.Within(
                start,
                -20,
                100,
                "vat temperature",
                "degrees C",
                nameof(temperatureStart)
            );
        if (temperatureEnd is { } end)
            TemperatureEnd = Require.Within(end, -20, 100, "vat temperature", "degrees C", nameof(temperatureEnd));
    }

    /// <summary>Layer height in mm.</summary>
    public double Layer { get; }

    /// <summary>The resin's name, of one line, or empty.</summary>
    public string Resin { get; }

    /// <summary>The printer's name, or empty.</summary>
    public string Printer { get; }

    /// <summary>What had been done to the part when it was measured.</summary>
    public PartState State { get; }

    /// <summary>Whether the slicer wrote grey-level edges.</summary>
    public bool GreyLevels { get; }

    /// <summary>How the object lay, degrees about Z: 0 or 90.</summary>
    public int Orientation { get; }

    /// <summary>Vat temperature at the start, degrees C, or null.</summary>
    public double? TemperatureStart { get; }

    /// <summary>Vat temperature at the end, degrees C, or null.</summary>
    public double? TemperatureEnd { get; }

    /// <summary>The bottle or batch of the resin, or empty.</summary>
    /// <exception cref="ArgumentException">It is not of one line.</exception>
    public string Bottle
    {
        get;
        init => field = Require.OneLine(value, "bottle", nameof(Bottle));
    } = "";

    /// <summary>Which film is in the vat, or empty.</summary>
    /// <exception cref="ArgumentException">It is not of one line.</exception>
    public string Film
    {
        get;
        init => field = Require.OneLine(value, "film", nameof(Film));
    } = "";

    /// <summary>Which screen or light engine is in the printer, or empty.</summary>
    /// <exception cref="ArgumentException">It is not of one line.</exception>
    public string Screen
    {
        get;
        init => field = Require.OneLine(value, "screen", nameof(Screen));
    } = "";

    /// <summary>
    /// What differs so that prints must not be pooled, as words such as <c>layer 0.03 mm instead of 0.05 mm</c>; empty
    /// when nothing does.
    /// </summary>
    /// <param name="reference">The conditions to compare with.</param>
    public IReadOnlyList<string> DifferencesFrom(TrialConditions reference)
    {
        ArgumentNullException.ThrowIfNull(reference);
        var differences = new List<string>();
        void Say(bool differs, FormattableString text)
        {
            if (differs)
                differences.Add(FormattableString.Invariant(text));
        }

        Say(Resin != reference.Resin, $"resin '{Resin}' instead of '{reference.Resin}'");
        Say(Printer != reference.Printer, $"printer '{Printer}' instead of '{reference.Printer}'");
        Say(Math.Abs(Layer - reference.Layer) > 1e-9, $"layer {Layer} mm instead of {reference.Layer} mm");
        Say(State != reference.State, $"measured {Word(State)} instead of {Word(reference.State)}");
        Say(
            GreyLevels != reference.GreyLevels,
            $"grey levels {OnOff(GreyLevels)} instead of {OnOff(reference.GreyLevels)}"
        );
        Say(Orientation != reference.Orientation, $"turned {Orientation} instead of {reference.Orientation} degrees");
        Say(
            Apart(Temperature, reference.Temperature),
            $"vat {Temperature} instead of {reference.Temperature} degrees C"
        );
        return differences;
    }

    /// <summary>The mean vat temperature of the print, degrees C, or null.</summary>
    public double? Temperature =>
        TemperatureStart is { } start && TemperatureEnd is { } end
            ? (start + end) / 2
            : TemperatureStart ?? TemperatureEnd;

    internal static string Word(PartState state) =>
        state switch
        {
            PartState.Washed => "washed",
            PartState.Dry => "dry",
            _ => "post-cured",
        };

    private static string OnOff(bool on) => on ? "on" : "off";

    private static bool Apart(double? a, double? b) => a is { } x && b is { } y && Math.Abs(x - y) > TemperatureBand;
}
