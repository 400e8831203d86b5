using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning.Regression;
using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// The slot comb as a gauge of light: print-through z = z0 + Dp ln(t / t0), bracketed by the highest closed and the
/// lowest open slot of each
/// trial. It answers to exposure about Dp / b, that is several times, more strongly than side growth does. Immutable.
/// </summary>
public sealed class PrintThroughResponse
{
    // Roughness of a tunnel's roof and the judgement of what is open: our estimate.
    private const double Blur = 0.015;
    private const double StartMean = 0.25,
        StartDeviation = 0.20;
    private readonly LeastSquaresFit fit;
    private readonly double referenceTime;

    private PrintThroughResponse(LeastSquaresFit fit, double referenceTime, IReadOnlyList<double> deviations)
    {
        this.fit = fit;
        this.referenceTime = referenceTime;
        Deviations = deviations;
    }

    /// <summary>Dp in mm, with what the prior adds.</summary>
    public double PenetrationDepth => Math.Exp(fit.Parameters[1]);

    /// <summary>
    /// For each trial with a comb, in order: by how many of its standard deviations the print-through that the line
    /// gives lies outside the
    /// bracket (0 inside it). Beyond 2 the light was not what the exposure time says.
    /// </summary>
    public IReadOnlyList<double> Deviations { get; }

    /// <summary>Learns from the trials that have a comb; null when none has.</summary>
    /// <param name="trials">Trials under the same conditions.</param>
    /// <param name="priors">What is believed before.</param>
    public static PrintThroughResponse? Learn(IReadOnlyList<Trial> trials, ExposurePriors? priors = null)
    {
        ArgumentNullException.ThrowIfNull(trials);
        priors ??= ExposurePriors.Default;
        Trial[] combs = trials.Where(t => t.Slots is not null).ToArray();
        if (combs.Length == 0)
            return null;
        double t0 = combs[0].Settings.Time;
        double[] Residuals(double[] p)
        {
            var r = new List<double>
            {
                (p[0] - StartMean) / StartDeviation,
                (p[1] - Math.Log(priors.PenetrationDepth.Median)) / priors.PenetrationDepth.LogDeviation,
            };
            foreach (Trial t in combs)
                r.Add(Outside(t.Slots!, p[0] + Math.Exp(p[1]) * Math.Log(t.Settings.Time / t0)));
            return r.ToArray();
        }

        LeastSquaresFit fit = LeastSquares.Minimise(Residuals, [StartMean, Math.Log(priors.PenetrationDepth.Median)]);
        double[] deviations = combs
            .Select(t =>
                Distance(t.Slots!, fit.Parameters[0] + Math.Exp(fit.Parameters[1]) * Math.Log(t.Settings.Time / t0))
                / Blur
            )
            .ToArray();
        return new PrintThroughResponse(fit, t0, deviations);
    }

    /// <summary>The print-through to expect at an exposure, mm.</summary>
    /// <param name="time">Exposure time in s.</param>
    public GrowthPrediction At(double time)
    {
        double x = PenetrationDepth * Math.Log(time / referenceTime);
        var covariance = fit.Covariance;
        double variance = covariance[0, 0] + 2 * x * covariance[0, 1] + x * x * covariance[1, 1];
        return new GrowthPrediction(fit.Parameters[0] + x, Math.Sqrt(variance));
    }

    /// <summary>The accumulated dose under a ceiling over the critical dose at an exposure: exp(z / Dp).</summary>
    /// <param name="time">Exposure time in s.</param>
    public double DoseRatio(double time) => Math.Exp(At(time).Mean / PenetrationDepth);

    /// <summary>
    /// Whether the slots of a trial do not fit its exposure time. One comb alone can only disagree with what was
    /// assumed before it.
    /// </summary>
    internal bool ChangedIn(Trial last) => Deviations.Count > 1 && last.Slots is not null && Deviations[^1] > 2;

    /// <summary>The exposure time in s at which print-through reaches a depth.</summary>
    internal double TimeFor(double depth) => referenceTime * Math.Exp((depth - fit.Parameters[0]) / PenetrationDepth);

    private static double Outside(SlotOutcome slots, double z)
    {
        double above = double.IsNegativeInfinity(slots.HighestClosed)
            ? 1
            : Normal.CDF(0, 1, (z - slots.HighestClosed) / Blur);
        double beyond = double.IsPositiveInfinity(slots.LowestOpen)
            ? 0
            : Normal.CDF(0, 1, (z - slots.LowestOpen) / Blur);
        return Math.Sqrt(Math.Max(0, -2 * Math.Log(Math.Max(above - beyond, 1e-200))));
    }

    private static double Distance(SlotOutcome slots, double z) =>
        Math.Max(0, Math.Max(slots.HighestClosed - z, z - slots.LowestOpen));
}
