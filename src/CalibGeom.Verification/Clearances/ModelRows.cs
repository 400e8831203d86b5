using System.Globalization;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// The rows of a fit: what each reading consists of. A face's mean is W (1 + s) +- 2 g + face + form + burr + jaw +
/// scale of the instrument + step or scatter, with one independent source for each, shared where the cause is.
/// </summary>
internal sealed class ModelRows
{
    /// <summary>Names of sources that an instrument carries from one print to the next begin like this.</summary>
    internal const string InstrumentPrefix = "instrument.";

    /// <summary>Expansion of cured resin where none is given, 1/K: the middle of 50e-6 to 120e-6; no source.</summary>
    private const double TypicalExpansion = 80e-6;

    /// <summary>How far a room may be from 20 degrees C when nobody says, plus or minus K; no source.</summary>
    private const double UnknownWarmth = 5;

    private readonly LinearSystem system;
    private readonly PredictionOptions options;
    private readonly FitSettings settings;
    private readonly Dictionary<string, RepeatScatter> scatter;
    private readonly string[] axes;

    internal ModelRows(
        LinearSystem system,
        PredictionOptions options,
        FitSettings settings,
        Dictionary<string, RepeatScatter> scatter,
        string[] axes
    )
    {
        this.system = system;
        this.options = options;
        this.settings = settings;
        this.scatter = scatter;
        this.axes = axes;
    }

    internal int Index(string axis) => 2 * Array.IndexOf(axes, axis);

    /// <summary>
    /// A face's deviation from the model, whoever reads it and in whichever print. Walls that read badly are bent:
    /// where form was raised it is, in proportion, and it belongs to the joint however many readings there are.
    /// </summary>
    internal int FaceSource(Face face)
    {
        double phase = options.PhaseError(face.Nominal),
            raised = options.FormError > 0 ? settings.Form / options.FormError : 1,
            own = raised * options.ModelDeviation;
        double u = Math.Sqrt(own * own + phase * phase);
        return system.Source($"face.{face.Id}", "deviation of faces from the model", u, InputShape.Normal);
    }

    /// <summary>What a print's growth is more than the mean's, along an axis.</summary>
    internal (int Source, double Factor)[] PrintSources(string print, string axis, double factor) =>
        [
            (PrintSource($"print.{print}", settings.Variation.Common), factor),
            (PrintSource($"print.{print}.{axis}", settings.Variation.Separate), factor),
        ];

    internal int BurrSource() =>
        system.Source("burr", "burrs or raised corners of boxes", options.BurrError, InputShape.Normal);

    internal void AddFace(MatchedReadings print, int number, bool several, ReadingGroup group, Face face)
    {
        double[] c = new double[2 * axes.Length];
        c[Index(face.Axis)] = face.Nominal;
        c[Index(face.Axis) + 1] = 2 * face.Sign;
        string place = Text($"{number}.{face.Id}{(group.Middle ? ".middle" : "")}");
        var errors = new List<(int, double)>
        {
            (FaceSource(face), 1),
            (
                system.Source($"form.{place}", "form of faces", settings.Form, InputShape.Normal, settings.FormFreedom),
                1
            ),
        };
        if (HasCorners(face) && !group.Middle)
            errors.Add((BurrSource(), 1));
        if (several)
            errors.AddRange(PrintSources(Text($"{number}"), face.Axis, 2 * face.Sign));
        Jaw jaw = group.Instrument.Jaw ?? face.Jaw;
        AddInstrument(errors, group, jaw, face.Nominal, Text($"{number}"));
        if (print.Set.Material != Material.Rigid)
            errors.Add((GiveSource(jaw), 1));
        AddTemperature(errors, print, face.Nominal, number);
        system.Add(group.Mean - face.Nominal, c, [.. errors]);
    }

    internal void AddReference(ReadingGroup group, int number, double[]? coefficients = null)
    {
        (Jaw jaw, double nominal) = MatchedReadings.ReferenceOf(group.Id);
        var errors = new List<(int, double)>
        {
            (system.Source(group.Id, "gauge", options.ReferenceUncertainty, InputShape.Normal), 1),
        };
        AddInstrument(errors, group, group.Instrument.Jaw ?? jaw, nominal, Text($"{number}"));
        system.Add(group.Mean - nominal, coefficients ?? new double[2 * axes.Length], [.. errors]);
    }

    internal void AddScalePrior(string axis)
    {
        double[] c = new double[2 * axes.Length];
        c[Index(axis)] = 1;
        int source = system.Source(
            $"scale.{axis}",
            $"scale assumed in {axis.ToUpperInvariant()}",
            options.ScalePrior,
            InputShape.Normal
        );
        system.Add(0, c, (source, 1));
    }

    /// <summary>Spans are flats without corners in the jaws' way; boxes have four.</summary>
    internal static bool HasCorners(Face face) => !face.Inside && face.Id.Part == KnownFeatures.Box;

    /// <summary>Constant bias and scale of the instrument, and the larger of its step and its scatter.</summary>
    internal void AddInstrument(List<(int, double)> errors, ReadingGroup group, Jaw jaw, double length, string print)
    {
        Instrument i = group.Instrument;
        string name = i.Name.Length > 0 ? i.Name : "the caliper";
        RepeatScatter repeats = scatter[i.Name];
        errors.Add((Constant(i, name, jaw), 1));
        errors.Add((AlongScale(i, name, jaw, length), 1));
        errors.Add((repeats.ShowsStep(group) ? Noise(group, name, repeats, print) : Step(group, name, print), 1));
    }

    private int Step(ReadingGroup group, string name, string print) =>
        system.Source(
            $"step.{print}.{group.Id}.{group.Instrument.Name}.{group.Middle}",
            $"display step of {name}",
            RepeatScatter.OfStep(group.Instrument),
            InputShape.Rectangular
        );

    private int Noise(ReadingGroup group, string name, RepeatScatter repeats, string print) =>
        system.Source(
            Text($"scatter.{print}.{group.Id}.{group.Instrument.Name}.{system.RowCount}"),
            $"repeatability of {name}",
            repeats.OfMean(group),
            InputShape.Normal,
            repeats.Freedom,
            Evaluation.A
        );

    private int Constant(Instrument i, string name, Jaw jaw) =>
        system.Source(
            $"{InstrumentPrefix}{i.Name}.{jaw}",
            $"{ReadingWords.Of(jaw)} jaws of {name}",
            i.ConstantErrorOf(jaw),
            InputShape.Rectangular
        );

    /// <summary>One error for lengths within half a millimetre: a reference there removes it too.</summary>
    private int AlongScale(Instrument i, string name, Jaw jaw, double length) =>
        system.Source(
            Text($"{InstrumentPrefix}{i.Name}.{jaw}.{Math.Round(2 * length) / 2}"),
            $"scale of {name} from length to length",
            i.VaryingErrorOf(jaw),
            InputShape.Rectangular
        );

    private int GiveSource(Jaw jaw) =>
        system.Source(
            $"give.{jaw}",
            $"give under the {ReadingWords.Of(jaw)} jaws",
            options.FlexibleError,
            InputShape.Normal
        );

    private int PrintSource(string name, double u) =>
        system.Source(name, "print to print", u, InputShape.Normal, settings.Variation.DegreesOfFreedom);

    /// <summary>
    /// A temperature that was read is known to 1 K; where none is said the room's range enters. An expansion
    /// coefficient that was given is known to 10 %; where none is said sizes stay uncorrected and the typical one
    /// enters whole.
    /// </summary>
    private void AddTemperature(List<(int, double)> errors, MatchedReadings print, double nominal, int number)
    {
        double? given = print.Set.Expansion;
        double apart = (given ?? TypicalExpansion) - MatchedReadings.SteelExpansion;
        double range = print.Set.Temperature is null ? UnknownWarmth : 1;
        int temperature = system.Source(
            Text($"temperature.{number}"),
            "temperature of the part",
            range / Math.Sqrt(3),
            InputShape.Rectangular
        );
        errors.Add((temperature, nominal * apart));
        if (given is { } expansion && print.Set.Temperature is not null)
            errors.Add(
                (
                    system.Source("expansion", "expansion coefficient", 0.1 * expansion, InputShape.Normal),
                    nominal * print.Warmth
                )
            );
        else if (given is null && print.Set.Temperature is { } t)
            errors.Add(
                (
                    system.Source("expansion", "expansion, not corrected for", apart, InputShape.Normal),
                    nominal * (t - 20)
                )
            );
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
