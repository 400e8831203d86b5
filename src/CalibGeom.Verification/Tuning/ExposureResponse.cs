using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning.Regression;
using CalibGeom.Verification.Uncertainty;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// How growth answers to exposure and rest, learnt from trials: g = a + b ln(t / t0) - c (1 - exp(-r / tau)), with
/// priors, between-print
/// deviation, a misfit for each setting and a bias for each caliper. The most probable values are found by least
/// squares and their
/// uncertainty by Laplace's approximation. Immutable and safe to share between threads.
/// </summary>
public sealed class ExposureResponse
{
    private const int SampleCount = 400;
    private const double MisfitReach = 0.4;
    private readonly GrowthModel model;
    private readonly LeastSquaresFit fit;
    private readonly double[][] samples;
    private readonly (double Effect, double Rate)[] restSamples;
    private readonly ExposurePriors priors;
    private readonly Lazy<double?> curvature,
        fitProbability;

    private ExposureResponse(
        GrowthModel model,
        LeastSquaresFit fit,
        ExposurePriors priors,
        Lazy<double?> curvature,
        Lazy<double?> fitProbability
    )
    {
        this.curvature = curvature;
        this.fitProbability = fitProbability;
        this.model = model;
        this.fit = fit;
        this.priors = priors;
        Matrix<double> covariance = fit.Covariance;
        samples = Draw(fit.Parameters, covariance);
        restSamples = samples.Select(p => (Math.Exp(p[GrowthModel.C]), Math.Exp(-p[GrowthModel.Tau]))).ToArray();
        AxisDifference = new GrowthPrediction(
            fit.Parameters[GrowthModel.Difference],
            Math.Sqrt(covariance[GrowthModel.Difference, GrowthModel.Difference])
        );
    }

    /// <summary>t0: the exposure time in s at which the growth a is meant, that of the first trial.</summary>
    public double ReferenceTime => model.ReferenceTime;

    /// <summary>a, the growth at the reference exposure without rest, mm.</summary>
    public double GrowthAtReference => fit.Parameters[GrowthModel.A];

    /// <summary>b, mm for a factor e of exposure.</summary>
    public double TimeEffect => Math.Exp(fit.Parameters[GrowthModel.B]);

    /// <summary>c, mm after a long rest.</summary>
    public double RestEffect => Math.Exp(fit.Parameters[GrowthModel.C]);

    /// <summary>tau, s.</summary>
    public double RestTime => Math.Exp(fit.Parameters[GrowthModel.Tau]);

    /// <summary>Growth along X less growth along Y, mm.</summary>
    public GrowthPrediction AxisDifference { get; }

    /// <summary>
    /// The probability of trials that fit together as badly as these or worse, if formula, priors and stated
    /// uncertainties hold; null when
    /// nothing was measured. Below 0.05 something is missing from the formula.
    /// </summary>
    public double? FitProbability => fitProbability.Value;

    /// <summary>
    /// The coefficient of ln(t / t0) squared over its standard uncertainty, or null with fewer than three exposures;
    /// beyond 2 the response is curved.
    /// </summary>
    public double? CurvatureRatio => curvature.Value;

    /// <summary>Learns from trials; without any the answer is the prior.</summary>
    /// <param name="trials">Trials under the same conditions.</param>
    /// <param name="priors">What is believed before.</param>
    /// <param name="referenceTime">t0 in s; by default the exposure of the first trial.</param>
    /// <param name="restActs">Whether rest changes growth at all; false fits with c = 0.</param>
    /// <exception cref="ArgumentException">A prior is out of range, or there is neither a trial nor a reference
    /// time.</exception>
    public static ExposureResponse Learn(
        IReadOnlyList<Trial> trials,
        ExposurePriors? priors = null,
        double? referenceTime = null,
        bool restActs = true
    )
    {
        ArgumentNullException.ThrowIfNull(trials);
        priors ??= ExposurePriors.Default;
        priors.Check();
        if (trials.Count == 0 && referenceTime is null)
            throw new ArgumentException("Without trials a reference time is needed.", nameof(referenceTime));
        double t0 = referenceTime ?? trials[0].Settings.Time;
        var model = new GrowthModel(
            trials,
            priors,
            Require.Positive(t0, 600, "reference time", "s", nameof(referenceTime)),
            rested: restActs
        );
        LeastSquaresFit fit = model.Fit();
        return new ExposureResponse(
            model,
            fit,
            priors,
            new(() => Curvature(trials, priors, t0, restActs)),
            new(() => Probability(trials, priors, t0, restActs))
        );
    }

    /// <summary>The growth to expect at some settings.</summary>
    /// <param name="settings">Exposure, rest and edge offset.</param>
    public GrowthPrediction At(ExposureSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        int visited = IndexOf(settings);
        double Value(double[] p) =>
            model.Growth(p, settings.Time, settings.Rest) + (visited >= 0 ? p[model.FirstMisfit + visited] : 0);
        (_, double deviation) = Moments(Value);
        double missing = visited >= 0 ? 0 : priors.LackOfFit;
        return new GrowthPrediction(
            Value(fit.Parameters) + settings.EdgeOffset,
            Math.Sqrt(deviation * deviation + missing * missing)
        );
    }

    /// <summary>
    /// The change of growth from one pair of exposure and rest to another, with what the formula may miss at either.
    /// </summary>
    /// <param name="from">The one.</param>
    /// <param name="to">The other.</param>
    public GrowthPrediction Change(ExposureSettings from, ExposureSettings to)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        double Value(double[] p) => model.Growth(p, to.Time, to.Rest) - model.Growth(p, from.Time, from.Rest);
        return new GrowthPrediction(Value(fit.Parameters) + to.EdgeOffset - from.EdgeOffset, Moments(Value).Deviation);
    }

    /// <summary>Low and high end of the growth change in the central share of what is believed.</summary>
    /// <param name="from">The one pair.</param>
    /// <param name="to">The other.</param>
    /// <param name="confidence">The share, above 0 and below 1. Default 0.95.</param>
    public (double Low, double High) ChangeInterval(
        ExposureSettings from,
        ExposureSettings to,
        double confidence = 0.95
    )
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        double[] changes = samples
            .Select(p => model.Growth(p, to.Time, to.Rest) - model.Growth(p, from.Time, from.Rest))
            .Order()
            .ToArray();
        int cut = (int)Math.Round((1 - confidence) / 2 * changes.Length);
        return (changes[cut] + to.EdgeOffset - from.EdgeOffset, changes[^(cut + 1)] + to.EdgeOffset - from.EdgeOffset);
    }

    /// <summary>
    /// The exposure time in s that gives a growth at some rest and edge offset, by the most probable response.
    /// </summary>
    /// <param name="growth">The wanted growth in mm, edge offset included.</param>
    /// <param name="rest">Rest in s.</param>
    /// <param name="edgeOffset">Edge offset in mm.</param>
    public double TimeFor(double growth, double rest, double edgeOffset = 0)
    {
        double room = model.Growth(fit.Parameters, ReferenceTime, rest) + LocalMisfit(rest) + edgeOffset;
        return ReferenceTime * Math.Exp((growth - room) / TimeEffect);
    }

    /// <summary>
    /// How much a further second of rest lets edges draw back, in mm: the value exceeded with some probability.
    /// </summary>
    /// <param name="rest">The rest in s from which the second is counted.</param>
    /// <param name="probability">The probability, above 0 and below 1. Default 0.5.</param>
    public double RestGain(double rest, double probability = 0.5)
    {
        var gains = new double[restSamples.Length];
        for (int i = 0; i < gains.Length; i++)
            gains[i] =
                restSamples[i].Effect * Math.Exp(-rest * restSamples[i].Rate) * (1 - Math.Exp(-restSamples[i].Rate));
        Array.Sort(gains);
        return gains[Math.Clamp((int)((1 - probability) * gains.Length), 0, gains.Length - 1)];
    }

    // Misfits of visited settings pull the curve to what was measured at about the same rest.
    private double LocalMisfit(double rest)
    {
        double sum = 0,
            weight = 0;
        for (int k = 0; k < model.Settings.Count; k++)
        {
            double near = (model.Settings[k].Rest - rest) / MisfitReach,
                w = Math.Exp(-near * near / 2);
            sum += w * fit.Parameters[model.FirstMisfit + k];
            weight += w;
        }
        return sum / Math.Max(1, weight);
    }

    private int IndexOf(ExposureSettings settings)
    {
        for (int k = 0; k < model.Settings.Count; k++)
            if (model.Settings[k].SameProcess(settings))
                return k;
        return -1;
    }

    private (double Mean, double Deviation) Moments(Func<double[], double> value)
    {
        double sum = 0,
            square = 0;
        foreach (double[] p in samples)
        {
            double v = value(p);
            sum += v;
            square += v * v;
        }
        double mean = sum / samples.Length;
        return (mean, Math.Sqrt(Math.Max(0, square / samples.Length - mean * mean)));
    }

    // Without felt fits: what a word adds to the sum of squares is no square of a standard normal.
    private static double? Probability(IReadOnlyList<Trial> trials, ExposurePriors priors, double t0, bool restActs)
    {
        var measured = new GrowthModel([.. trials.Select(t => t with { Joints = [] })], priors, t0, rested: restActs);
        return measured.Observations == 0
            ? null
            : 1 - ChiSquared.CDF(measured.Observations, measured.Fit().SumOfSquares);
    }

    private static double? Curvature(IReadOnlyList<Trial> trials, ExposurePriors priors, double t0, bool restActs)
    {
        if (trials.Select(t => Math.Round(t.Settings.Time, 9)).Distinct().Count() < 3)
            return null;
        var curved = new GrowthModel(trials, priors, t0, curved: true, rested: restActs);
        LeastSquaresFit fit = curved.Fit();
        return fit.Parameters[curved.Curvature] / Math.Sqrt(fit.Covariance[curved.Curvature, curved.Curvature]);
    }

    // Fixed seed and pairs of opposite sign: the same trials give the same answer, and means are exact.
    private static double[][] Draw(double[] mean, Matrix<double> covariance)
    {
        Matrix<double> root = covariance.Cholesky().Factor;
        var random = new SeededRandom(20260301);
        var drawn = new double[SampleCount][];
        for (int i = 0; i < SampleCount; i += 2)
        {
            Vector<double> move = root * Vector<double>.Build.Dense(mean.Length, _ => random.Normal());
            drawn[i] = mean.Select((m, k) => m + move[k]).ToArray();
            drawn[i + 1] = mean.Select((m, k) => m - move[k]).ToArray();
        }
        return drawn;
    }
}
