using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning.Sampling;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// How growth answers to exposure and rest, learnt from trials: g = a + b ln(t / t0) - c (1 - exp(-r / tau)), with a
/// misfit for each setting, a deviation between prints that repeat prints teach, and a bias for each caliper that no
/// print can teach. Everything is said from weighted draws of what is believed after the trials. Immutable and safe to
/// share between threads.
/// </summary>
public sealed class ExposureResponse
{
    private readonly GrowthSample[] samples;
    private readonly double[] weights,
        biases,
        elsewhere;
    private readonly IReadOnlyList<ExposureSettings> visited;
    private readonly GrowthLatents latents;
    private readonly double timeEffectMean;
    private readonly Func<CancellationToken, ExposureResponse>? fitWithDrift;
    private ExposureResponse? toCome;

    private ExposureResponse(
        GrowthModel model,
        ExposurePriors priors,
        int prints,
        Func<CancellationToken, ExposureResponse>? fitWithDrift,
        CancellationToken cancellation
    )
    {
        this.fitWithDrift = fitWithDrift;
        WeightedDraws<GrowthSample> draws = model.Draw(cancellation);
        weights = draws.Weights;
        samples = draws.Drawn;
        latents = model.Latents;
        visited = latents.Settings;
        ReferenceTime = model.ReferenceTime;
        timeEffectMean = Weighted.Mean([.. samples.Select(s => s.B)], weights);
        var random = new SeededRandom(20260303);
        elsewhere = [.. samples.Select(_ => priors.LackOfFit * random.Normal())];
        biases = prints == 0 ? new double[samples.Length] : [.. samples.Select(s => latents.Bias(s.Latents))];
        (double bias, double biasDeviation) = Weighted.Moments(biases, weights);
        CaliperBias = new GrowthPrediction(bias, biasDeviation);
        (double d, double u) = Weighted.Moments([.. samples.Select(s => latents.Difference(s.Latents))], weights);
        AxisDifference = new GrowthPrediction(d, u);
        BetweenPrints = Middle(s => s.BetweenPrints);
        GrowthAtReference = Weighted.Mean([.. samples.Select(s => s.A)], weights);
        TimeEffect = Middle(s => s.B);
        RestEffect = Middle(s => s.C);
        RestTime = Middle(s => s.Tau);
        ReadingUncertainty = latents.Readings.Count == 0 ? 1 : latents.Readings[^1].Uncertainty;
    }

    /// <summary>t0: the exposure time in s at which the growth a is meant, that of the first trial.</summary>
    public double ReferenceTime { get; }

    /// <summary>a, the growth at the reference exposure without rest, mm (mean).</summary>
    public double GrowthAtReference { get; }

    /// <summary>b, mm for a factor e of exposure (median).</summary>
    public double TimeEffect { get; }

    /// <summary>b as it is believed after the trials, as a lognormal law.</summary>
    internal LogNormalPrior TimeEffectNow
    {
        get
        {
            double[] q = Weighted.Quantiles(
                [.. samples.Select(s => s.B)],
                weights,
                Coverage.LowerTail,
                0.5,
                Coverage.UpperTail
            );
            return LogNormalPrior.Of95(q[1], q[0], q[2]);
        }
    }

    /// <summary>c, mm after a long rest (median).</summary>
    public double RestEffect { get; }

    /// <summary>tau, s (median).</summary>
    public double RestTime { get; }

    /// <summary>Standard deviation of growth between prints at the same settings, mm (median).</summary>
    public double BetweenPrints { get; }

    /// <summary>Growth along X less growth along Y, mm.</summary>
    public GrowthPrediction AxisDifference { get; }

    /// <summary>
    /// What the caliper of the last trial adds to growth, and how unsure that is: no print lowers it, only a gauge
    /// block or a fit that was felt.
    /// </summary>
    public GrowthPrediction CaliperBias { get; }

    /// <summary>The uncertainty of the last measured growth, mm; 1 when nothing was measured.</summary>
    internal double ReadingUncertainty { get; }

    /// <summary>Learns from trials; without any the answer is the prior.</summary>
    /// <param name="trials">Trials under the same conditions.</param>
    /// <param name="priors">What is believed before.</param>
    /// <param name="referenceTime">t0 in s; by default the exposure of the first trial.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentException">A prior is out of range, or there is neither a trial nor a reference
    /// time.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ExposureResponse Of(
        IReadOnlyList<Trial> trials,
        ExposurePriors? priors = null,
        double? referenceTime = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(trials);
        priors ??= ExposurePriors.Default;
        if (trials.Count == 0 && referenceTime is null)
            throw new ArgumentException("Without trials a reference time is needed.", nameof(referenceTime));
        double t0 = Require.Positive(
            referenceTime ?? trials[0].Settings.Time,
            ExposureSettings.Longest,
            "reference time",
            "s",
            nameof(referenceTime)
        );
        Trial[] copy = [.. trials];
        return UnseenDrift.Fit<ExposureResponse>(
            priors,
            (with, fitWithDrift, c) => new(new GrowthModel(copy, with, t0), with, copy.Length, fitWithDrift, c),
            cancellation
        );
    }

    /// <summary>The growth to expect of the process at some settings.</summary>
    /// <param name="settings">Exposure, rest and edge offset.</param>
    /// <param name="withCaliper">Whether the uncertainty holds what the caliper may be wrong by; false: only what
    /// prints can teach. Default true.</param>
    public GrowthPrediction At(ExposureSettings settings, bool withCaliper = true)
    {
        (double mean, double deviation) = Weighted.Moments(Values(settings, withCaliper), weights);
        return new GrowthPrediction(mean, deviation);
    }

    /// <summary>
    /// The central interval of the growth of the process at some settings when the next print is made, mm: with what
    /// the caliper may be wrong by, and light that moves unseen (<see cref="ExposurePriors.LightDrift"/>).
    /// </summary>
    /// <param name="settings">The settings.</param>
    /// <param name="confidence">The share, above 0 and below 1. Default 0.95.</param>
    public Interval IntervalAt(ExposureSettings settings, double confidence = 0.95) =>
        ToCome().Central(ToCome().Values(settings, true), confidence);

    /// <summary>
    /// The central interval of the change of growth from one pair of exposure and rest to another, mm.
    /// </summary>
    /// <param name="from">The one.</param>
    /// <param name="to">The other.</param>
    /// <param name="confidence">The share, above 0 and below 1. Default 0.95.</param>
    internal Interval ChangeInterval(ExposureSettings from, ExposureSettings to, double confidence = 0.95)
    {
        double[] a = Values(from, true),
            b = Values(to, true);
        return Central([.. a.Zip(b, (x, y) => y - x)], confidence);
    }

    /// <summary>The exposure that should give a growth at some rest, by the mean of what is believed, s.</summary>
    /// <param name="growth">The growth wanted, mm.</param>
    /// <param name="rest">Rest in s.</param>
    /// <param name="edgeOffset">Edge offset in mm. Default 0.</param>
    public double TimeFor(double growth, double rest, double edgeOffset = 0)
    {
        double bare = 0;
        for (int i = 0; i < samples.Length; i++)
            bare += weights[i] * samples[i].Growth(0, rest);
        return ReferenceTime * Math.Exp((growth - edgeOffset - bare) / timeEffectMean);
    }

    /// <summary>
    /// How much a further second of rest lets edges draw back, in mm: the value exceeded with some probability.
    /// </summary>
    /// <param name="rest">The rest in s from which the second is counted.</param>
    /// <param name="probability">The probability, above 0 and below 1. Default 0.5.</param>
    public double RestGain(double rest, double probability = 0.5) =>
        Weighted.Quantiles([.. samples.Select(s => s.RestGain(rest))], weights, 1 - probability)[0];

    /// <summary>How much rest still draws edges back from one rest to a longer one, mm (median).</summary>
    internal double RestRoom(double from, double to) =>
        Weighted.Quantiles([.. samples.Select(s => s.Growth(0, from) - s.Growth(0, to))], weights, 0.5)[0];

    /// <summary>The probabilities that growth lies above, below and within a band, of what prints can teach.</summary>
    internal ClearanceChances ChancesAt(ExposureSettings settings, double low, double high)
    {
        double[] values = Values(settings, false);
        double above = Weighted.Share(values, weights, v => v > high),
            below = Weighted.Share(values, weights, v => v < low);
        return new ClearanceChances(1 - above - below, above, below);
    }

    /// <summary>
    /// How far one more print at some settings is expected to move what is believed of their growth, mm.
    /// </summary>
    internal double Lesson(ExposureSettings settings)
    {
        double known = At(settings, false).Uncertainty,
            print = Math.Sqrt(BetweenPrints * BetweenPrints + ReadingUncertainty * ReadingUncertainty);
        return known * known / Math.Sqrt(known * known + print * print);
    }

    /// <summary>
    /// The same for the print to come, with light that may drift: fitted when first asked for, since no order takes it.
    /// </summary>
    internal ExposureResponse ToCome(CancellationToken cancellation = default) =>
        toCome ??= fitWithDrift?.Invoke(cancellation) ?? this;

    private double[] Values(ExposureSettings settings, bool withCaliper)
    {
        ArgumentNullException.ThrowIfNull(settings);
        int at = IndexOf(settings);
        double x = Math.Log(settings.Time / ReferenceTime);
        var values = new double[samples.Length];
        for (int i = 0; i < values.Length; i++)
        {
            GrowthSample s = samples[i];
            values[i] =
                s.Growth(x, settings.Rest)
                + settings.EdgeOffset
                + (at >= 0 ? latents.Misfit(s.Latents, at) : elsewhere[i])
                + (withCaliper ? 0 : biases[i] - CaliperBias.Mean);
        }
        return values;
    }

    private int IndexOf(ExposureSettings settings)
    {
        for (int k = 0; k < visited.Count; k++)
            if (visited[k].SameProcess(settings))
                return k;
        return -1;
    }

    private Interval Central(double[] values, double confidence)
    {
        double[] ends = Weighted.Quantiles(values, weights, (1 - confidence) / 2, (1 + confidence) / 2);
        return new Interval(ends[0], ends[1]);
    }

    private double Middle(Func<GrowthSample, double> of) =>
        Weighted.Quantiles([.. samples.Select(of)], weights, 0.5)[0];
}
