using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Readings;

/// <summary>
/// A person with a caliper who never was: each jaw has one error for all that is read, the person draws the limits
/// between the words of a fit their own way, and every size scatters and is rounded to the step of the display.
/// Immutable and safe to share between threads.
/// </summary>
public sealed class SimulatedCaliper
{
    /// <summary>
    /// Standard deviation of what the form of a face adds to all its readings, mm. Typical, no source.
    /// </summary>
    public const double DefaultForm = 0.006;

    // How much of the variance of a felt limit belongs to the person; the rest changes from fit to fit. No source.
    private const double PersonsShare = 0.8;

    private readonly FitThresholds limits;
    private readonly double form,
        outside,
        inside,
        depth,
        person;

    /// <summary>A person with a caliper.</summary>
    /// <param name="seed">Whose: the same seed has the same errors of jaws and the same limits. Default 1.</param>
    /// <param name="instrument">What its errors are drawn from; its repeatability is the scatter where it is known.
    /// Null for the ordinary caliper.</param>
    /// <param name="form">Standard deviation of what the form of a face adds to all its readings, mm, 0 to 1. Default
    /// 0.006.</param>
    /// <param name="thresholds">Where the words of a fit change; null for the defaults.</param>
    /// <exception cref="ArgumentException">The form is out of range.</exception>
    public SimulatedCaliper(
        ulong seed = 1,
        Instrument? instrument = null,
        double form = DefaultForm,
        FitThresholds? thresholds = null
    )
        : this(instrument ?? Instrument.Caliper, thresholds ?? FitThresholds.Default, false)
    {
        this.form = Require.Within(form, 0, 1, "form error", "mm", nameof(form));
        var random = new SeededRandom(seed);
        outside = Instrument.OutsideError * random.Normal();
        inside = Instrument.InsideError * random.Normal();
        depth = Instrument.DepthError * random.Normal();
        person = limits.Deviation * Math.Sqrt(PersonsShare) * random.Normal();
    }

    private SimulatedCaliper(Instrument instrument, FitThresholds limits, bool isFaultless) =>
        (Instrument, this.limits, IsFaultless) = (instrument, limits, isFaultless);

    /// <summary>One that errs nowhere and shows every size as it is.</summary>
    public static SimulatedCaliper Faultless { get; } = new(Instrument.Caliper, FitThresholds.Default, true);

    /// <summary>What its errors were drawn from, and the name that its readings carry.</summary>
    public Instrument Instrument { get; }

    /// <summary>Whether it errs nowhere.</summary>
    public bool IsFaultless { get; }

    /// <summary>What is read of a size.</summary>
    /// <param name="feature">What is read.</param>
    /// <param name="faces">How the size answers to growth: inside jaws read what is free between its faces, unless the
    /// instrument has one kind of jaw for all.</param>
    /// <param name="size">The true size, mm, above 0.</param>
    /// <param name="random">What form and scatter are drawn from; a faultless caliper leaves it alone.</param>
    /// <param name="repeats">How often, 1 to 20. Default 1.</param>
    /// <exception cref="ArgumentException">The number of repeats or the size is out of range.</exception>
    public IReadOnlyList<Reading> Read(
        FeatureId feature,
        FaceKind faces,
        double size,
        SeededRandom random,
        int repeats = 1
    )
    {
        ArgumentNullException.ThrowIfNull(feature);
        ArgumentNullException.ThrowIfNull(random);
        ArgumentOutOfRangeException.ThrowIfLessThan(repeats, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(repeats, 20);
        Jaw jaw =
            Instrument.Jaw
            ?? (
                faces == FaceKind.Inside ? Jaw.Inside
                : feature.Size == KnownFeatures.Height ? Jaw.Depth
                : Jaw.Outside
            );
        double seen = size + ErrorOf(jaw) + Error(random, form),
            scatter = Instrument.Repeatability ?? Instrument.DefaultRepeatability;
        var readings = new Reading[repeats];
        for (int i = 0; i < repeats; i++)
            readings[i] = Reading.Size(feature, Shown(seen + Error(random, scatter)), Instrument.Name);
        return readings;
    }

    /// <summary>How a fit feels.</summary>
    /// <param name="fit">The fit, such as <c>joint1.fit</c>.</param>
    /// <param name="gaps">The true clearance per side along each axis, mm: the tightest decides whether it enters,
    /// their mean the rest.</param>
    /// <param name="random">What the limits of this fit are drawn from; a faultless caliper leaves it alone.</param>
    /// <exception cref="ArgumentException">There is no gap.</exception>
    public Reading Feel(FeatureId fit, IReadOnlyCollection<double> gaps, SeededRandom random)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(gaps);
        ArgumentNullException.ThrowIfNull(random);
        if (gaps.Count == 0)
            throw new ArgumentException($"{fit} has no gap to feel.", nameof(gaps));
        double error = person + Error(random, limits.Deviation * Math.Sqrt(1 - PersonsShare)),
            tighter = gaps.Min() + error,
            mean = gaps.Average() + error;
        return Reading.Felt(
            fit,
            tighter < limits.Binds ? FeltFit.Refuses
                : mean < limits.Slides ? FeltFit.Binds
                : mean < limits.Rattles ? FeltFit.Slides
                : FeltFit.Rattles
        );
    }

    private double ErrorOf(Jaw jaw) =>
        jaw switch
        {
            Jaw.Inside => inside,
            Jaw.Depth => depth,
            _ => outside,
        };

    private double Shown(double size)
    {
        double step = Instrument.Resolution;
        return IsFaultless ? size
            : step == 0 ? Math.Max(double.Epsilon, size)
            : Math.Max(step, Math.Round(size / step) * step);
    }

    private double Error(SeededRandom random, double deviation) => IsFaultless ? 0 : deviation * random.Normal();
}
