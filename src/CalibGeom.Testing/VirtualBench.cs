using CalibGeom.Light;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Testing;

/// <summary>
/// A bench with a virtual printer and a person with a caliper, for tests that go through trials: settings in, readings
/// out. Sizes come from light in closed form (<see cref="PrintedObject"/>), rest and columns from laws of ours without
/// a source. Immutable and safe to share between threads.
/// </summary>
public sealed record VirtualBench
{
    /// <summary>The resin's working curve. Default: penetration depth 0.12 mm, critical dose 8 mJ/cm2.</summary>
    public WorkingCurve Resin
    {
        get;
        init => field = Require.Given(value, nameof(Resin));
    } = new(0.12, 8);

    /// <summary>How light spreads sideways. Default: Gaussian, 0.02 mm.</summary>
    public EdgeBlur Blur
    {
        get;
        init => field = Require.Given(value, nameof(Blur));
    } = new GaussianBlur(0.02);

    /// <summary>Irradiance at the film, mW/cm2, above 0 and at most 1000. Default 4.</summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double Irradiance
    {
        get;
        init => field = Require.Positive(value, 1000, "irradiance", "mW/cm2", nameof(Irradiance));
    } = 4;

    /// <summary>Proportional change of all sizes, -0.1 to 0.1. Default 0.</summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double Scale
    {
        get;
        init => field = Require.Within(value, -0.1, 0.1, "scale", "", nameof(Scale));
    }

    /// <summary>How rest draws edges back. Default: <see cref="RestLaw"/>'s.</summary>
    public RestLaw Rest
    {
        get;
        init => field = Require.Given(value, nameof(Rest));
    } = new();

    /// <summary>Which columns come off the plate whole. Default: <see cref="SurvivalLaw"/>'s.</summary>
    public SurvivalLaw Survival
    {
        get;
        init => field = Require.Given(value, nameof(Survival));
    } = new();

    /// <summary>The person with their caliper. Default: one without fault.</summary>
    public SimulatedCaliper Caliper
    {
        get;
        init => field = Require.Given(value, nameof(Caliper));
    } = SimulatedCaliper.Faultless;

    /// <summary>Prints an object: its sizes and clearances are the truth that readings of it are to find.</summary>
    /// <param name="made">The object. Layer height and base layers are those of its process, or the defaults.</param>
    /// <param name="settings">Exposure, rest and edge offset.</param>
    public PrintedObject Print(TestObject made, ExposureSettings settings)
    {
        ArgumentNullException.ThrowIfNull(made);
        ArgumentNullException.ThrowIfNull(settings);
        ProcessSpec process = ProcessOf(made);
        var light = new LayerLight(
            Resin,
            Irradiance,
            settings.Time,
            process.LayerHeight,
            process.BaseLayers,
            process.BaseTime
        );
        return new PrintedObject(made, Blur, light, Scale, Rest.Retreat(settings.Rest), settings.EdgeOffset);
    }

    /// <summary>Prints an object and reads it, washed and dry.</summary>
    /// <param name="made">The object.</param>
    /// <param name="settings">Exposure, rest and edge offset.</param>
    /// <param name="seed">What scatter, form and the fate of columns are drawn from: another for each print. Default
    /// 1.</param>
    /// <param name="repeats">How often each size is read, 1 to 20. Default 1.</param>
    /// <exception cref="ArgumentException">The light cures nothing, or the number of repeats is out of
    /// range.</exception>
    public ReadingSet Read(TestObject made, ExposureSettings settings, ulong seed = 1, int repeats = 1)
    {
        var print = new VirtualPrint(Print(made, settings), Survival);
        return Sheet.Of(print.Read(Caliper, seed, repeats), Caliper, made.Features, PartState.Dry, Material.Rigid);
    }

    /// <summary>Prints an object, reads it and says what a log takes.</summary>
    /// <param name="made">The object.</param>
    /// <param name="settings">Exposure, rest and edge offset.</param>
    /// <param name="seed">What scatter, form and the fate of columns are drawn from. Default 1.</param>
    /// <exception cref="ArgumentException">The light cures nothing.</exception>
    /// <exception cref="InputException">The object has nothing that speaks of exposure.</exception>
    public Trial TrialOf(TestObject made, ExposureSettings settings, ulong seed = 1)
    {
        ArgumentNullException.ThrowIfNull(made);
        return TrialReadings.ToTrial(
            made.Features,
            Read(made, settings, seed),
            settings,
            new TrialConditions(ProcessOf(made).LayerHeight)
        );
    }

    private static ProcessSpec ProcessOf(TestObject made) => made.Spec.Process ?? new ProcessSpec();
}
