using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning.Sampling;
using CalibGeom.Verification.Uncertainty;
using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// Slot comb and bridge as gauges of light: print-through z = z0 + Dp ln(t / t0), bracketed by the highest closed and
/// the lowest open slot of each trial, or read off the bridge. A comb that is all open or all closed is a bound, and Dp
/// is then what was believed before. Immutable and safe to share between threads.
/// </summary>
public sealed class PrintThroughResponse
{
    // Roughness of a tunnel's roof and the judgement of what is open: our estimate.
    private const double Blur = 0.015;
    private const double StartMean = 0.25,
        StartDeviation = 0.20;
    private readonly double[] starts,
        depths,
        weights;
    private readonly double referenceTime;
    private readonly Func<CancellationToken, PrintThroughResponse>? fitWithDrift;
    private PrintThroughResponse? toCome;

    private PrintThroughResponse(
        Trial[] read,
        double referenceTime,
        double layer,
        ExposurePriors priors,
        QuotedLight? quoted,
        Func<CancellationToken, PrintThroughResponse>? fitWithDrift,
        CancellationToken cancellation
    )
    {
        this.fitWithDrift = fitWithDrift;
        var drift = new UnseenDrift(priors.LightDrift, read.Length);
        this.referenceTime = referenceTime;
        var bridges = new BridgeLikelihood(read);
        Known = bridges.Any || read.Any(t => t.Slots is { Open: > 0 } slots && slots.Open < slots.Heights.Count);
        Quoted = quoted is not null;
        double Depth(double[] z) =>
            quoted is null
                ? priors.PenetrationDepth.At(z[1])
                : quoted.PenetrationDepth * Math.Exp(QuotedLight.DepthDeviation * z[1]);
        double Start(double[] z) =>
            quoted is null
                ? StartMean + StartDeviation * z[0]
                : Depth(z)
                    * (
                        Math.Log(quoted.Irradiance * referenceTime / quoted.CriticalDose)
                        - QuotedLight.DoseDeviation * z[0]
                        - Math.Log(Math.Exp(layer / Depth(z)) - 1)
                    );
        WeightedDraws<(double Start, double Depth)> draws = AdaptiveSampler.Draw(
            drift.Dimension(2),
            z =>
            {
                (double start, double depth) = (Start(z), Depth(z));
                double each = drift.At(z),
                    sum = 0;
                var through = new double[read.Length];
                for (int i = 0; i < read.Length; i++)
                {
                    double logLight = Math.Log(read[i].Settings.Time / referenceTime) - each * drift.Before(i);
                    through[i] = start + depth * logLight;
                    if (read[i].Slots is { } slots)
                        sum += LogChance(slots, through[i]);
                }
                return ((start, depth), sum + bridges.Log(through));
            },
            cancellation: cancellation
        );
        weights = draws.Weights;
        starts = [.. draws.Drawn.Select(d => d.Start)];
        depths = [.. draws.Drawn.Select(d => d.Depth)];
        PenetrationDepth = Weighted.Quantiles(depths, weights, 0.5)[0];
    }

    /// <summary>
    /// Whether a bridge was read or some comb had open and closed slots; otherwise the combs give a bound and Dp is not
    /// known.
    /// </summary>
    public bool Known { get; }

    /// <summary>Whether a quoted working curve stands behind it.</summary>
    public bool Quoted { get; }

    /// <summary>Dp in mm (median).</summary>
    public double PenetrationDepth { get; }

    /// <summary>Dp as it is believed after the trials, as a lognormal law.</summary>
    internal LogNormalPrior PenetrationDepthNow
    {
        get
        {
            double[] q = Weighted.Quantiles(depths, weights, Coverage.LowerTail, 0.5, Coverage.UpperTail);
            return LogNormalPrior.Of95(q[1], q[0], q[2]);
        }
    }

    /// <summary>
    /// Learns from the trials that have a comb or a bridge; null when none has and no curve is quoted.
    /// </summary>
    /// <param name="trials">Trials under the same conditions.</param>
    /// <param name="priors">What is believed before.</param>
    /// <param name="quoted">A working curve from a data sheet, or null.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="InputException">A reading of a bridge is no thickness.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static PrintThroughResponse? Of(
        IReadOnlyList<Trial> trials,
        ExposurePriors? priors = null,
        QuotedLight? quoted = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(trials);
        Trial[] read = [.. trials.Where(IsRead)];
        if (trials.Count == 0 || (read.Length == 0 && quoted is null))
            return null;
        priors ??= ExposurePriors.Default;
        double time = trials[0].Settings.Time,
            layer = trials[0].Conditions.Layer;
        return UnseenDrift.Fit<PrintThroughResponse>(
            priors,
            (with, fitWithDrift, c) => new(read, time, layer, with, quoted, fitWithDrift, c),
            cancellation
        );
    }

    /// <summary>The print-through to expect at an exposure, mm.</summary>
    /// <param name="time">Exposure time in s.</param>
    public GrowthPrediction At(double time)
    {
        (double mean, double deviation) = Weighted.Moments(Depths(time), weights);
        return new GrowthPrediction(mean, deviation);
    }

    /// <summary>
    /// The central interval of print-through at an exposure when the next print is made, mm: with light that moves
    /// unseen (<see cref="ExposurePriors.LightDrift"/>).
    /// </summary>
    /// <param name="time">Exposure time in s.</param>
    /// <param name="confidence">The share, above 0 and below 1. Default 0.95.</param>
    public Interval IntervalAt(double time, double confidence = 0.95)
    {
        PrintThroughResponse then = ToCome();
        double[] ends = Weighted.Quantiles(then.Depths(time), then.weights, (1 - confidence) / 2, (1 + confidence) / 2);
        return new Interval(ends[0], ends[1]);
    }

    /// <summary>
    /// How deep one exposure of a layer cures, in layers (median): print-through less what later layers add, with Cd =
    /// z + Dp ln(exp(h / Dp) - 1).
    /// </summary>
    /// <param name="time">Exposure time in s.</param>
    /// <param name="layer">Layer height h in mm.</param>
    public double CuredLayers(double time, double layer) =>
        Weighted.Quantiles([.. Cured(time, layer).Select(c => c / layer)], weights, 0.5)[0];

    /// <summary>The probability that one exposure cures at least so many layers.</summary>
    internal double ChanceOfLayers(double time, double layer, double layers) =>
        Weighted.Share(Cured(time, layer), weights, c => c >= layers * layer);

    /// <summary>The probability that print-through exceeds a depth.</summary>
    internal double ChanceBeyond(double time, double depth) => Weighted.Share(Depths(time), weights, z => z > depth);

    /// <summary>
    /// The exposure time in s at which print-through reaches a depth, by the middle of what is believed.
    /// </summary>
    internal double TimeFor(double depth) =>
        Weighted.Quantiles(
            [.. starts.Select((s, i) => referenceTime * Math.Exp(Math.Clamp((depth - s) / depths[i], -6, 6)))],
            weights,
            0.5
        )[0];

    /// <summary>
    /// The same for the print to come, with light that may drift: fitted when first asked for, since no order takes it.
    /// </summary>
    internal PrintThroughResponse ToCome(CancellationToken cancellation = default) =>
        toCome ??= fitWithDrift?.Invoke(cancellation) ?? this;

    /// <summary>Whether a trial says how far light passes through.</summary>
    internal static bool IsRead(Trial trial) => trial.Slots is not null || BridgeReading.Of(trial) is not null;

    private double[] Depths(double time)
    {
        double x = Math.Log(time / referenceTime);
        return [.. starts.Select((s, i) => s + depths[i] * x)];
    }

    private double[] Cured(double time, double layer) =>
        [.. Depths(time).Select((z, i) => z + depths[i] * Math.Log(Math.Exp(layer / depths[i]) - 1))];

    private static double LogChance(SlotOutcome slots, double z)
    {
        double above = double.IsNegativeInfinity(slots.HighestClosed)
            ? 1
            : Normal.CDF(0, 1, (z - slots.HighestClosed) / Blur);
        double beyond = double.IsPositiveInfinity(slots.LowestOpen)
            ? 0
            : Normal.CDF(0, 1, (z - slots.LowestOpen) / Blur);
        return Math.Log(Math.Max(above - beyond, 1e-12));
    }
}
