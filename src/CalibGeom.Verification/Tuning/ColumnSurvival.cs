using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning.Sampling;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// Which columns come off the plate whole: logit = k (ln(d / d50) + m ln(t / t of the last trial)), with d50, k and m
/// drawn from what is believed after the counts. Columns lost in wash or cure count as printed: they speak of handling.
/// Immutable and safe to share between threads.
/// </summary>
public sealed class ColumnSurvival
{
    // What is believed before: the limit lies somewhere about the columns tried, survival turns over about a third
    // of a diameter.
    private const double LimitSpread = 0.6,
        SlopeMedian = 10,
        SlopeSpread = 0.5;
    private readonly double[] limits,
        slopes,
        exponents,
        weights;
    private readonly double referenceTime;
    private readonly Func<CancellationToken, ColumnSurvival>? fitWithDrift;
    private ColumnSurvival? toCome;

    private ColumnSurvival(
        Trial[] trials,
        ExposurePriors priors,
        Func<CancellationToken, ColumnSurvival>? fitWithDrift,
        CancellationToken cancellation
    )
    {
        this.fitWithDrift = fitWithDrift;
        var drift = new UnseenDrift(priors.LightDrift, trials.Length);
        ColumnOutcome[] all = [.. trials.SelectMany(t => t.Columns)];
        Count = all.Length;
        Lost = all.Count(c => !c.Printed);
        LostLater = all.Count(c => c.Printed && c.Stood != ColumnStage.Cure);
        Thinnest = all.Min(c => c.Diameter);
        Thickest = all.Max(c => c.Diameter);
        referenceTime = trials[^1].Settings.Time;
        (double LogDiameter, double LogTime, int Before, int Stood, int Lost)[] groups =
        [
            .. trials
                .SelectMany(
                    (t, i) => t.Columns.Select(c => (c.Diameter, t.Settings.Time, Before: drift.Before(i), c.Printed))
                )
                .GroupBy(c => (c.Diameter, c.Time, c.Before))
                .Select(g =>
                    (
                        Math.Log(g.Key.Diameter),
                        Math.Log(g.Key.Time / referenceTime),
                        g.Key.Before,
                        g.Count(c => c.Printed),
                        g.Count(c => !c.Printed)
                    )
                ),
        ];
        double middle = Math.Log(Thinnest * Thickest) / 2;
        double Limit(double[] z) => middle + LimitSpread * z[0];
        double Slope(double[] z) => SlopeMedian * Math.Exp(SlopeSpread * z[1]);
        double Exponent(double[] z) => Math.Max(0, priors.ColumnExponent + priors.ColumnExponentDeviation * z[2]);
        WeightedDraws<(double Limit, double Slope, double Exponent)> draws = AdaptiveSampler.Draw(
            drift.Dimension(3),
            z =>
            {
                double sum = 0,
                    limit = Limit(z),
                    slope = Slope(z),
                    exponent = Exponent(z),
                    each = drift.At(z);
                foreach ((double d, double t, int before, int stood, int lost) in groups)
                {
                    double logit = slope * (d - limit + exponent * (t - each * before)),
                        softened =
                            (Math.Abs(logit) > 20 ? 0 : Math.Log(1 + Math.Exp(-Math.Abs(logit)))) + Math.Max(0, -logit);
                    sum -= stood * softened + lost * (softened + logit);
                }
                return ((limit, slope, exponent), sum);
            },
            cancellation: cancellation
        );
        weights = draws.Weights;
        limits = [.. draws.Drawn.Select(d => d.Limit)];
        slopes = [.. draws.Drawn.Select(d => d.Slope)];
        exponents = [.. draws.Drawn.Select(d => d.Exponent)];
        TimeExponent = Weighted.Mean(exponents, weights);
    }

    /// <summary>How many columns were tried in all.</summary>
    public int Count { get; }

    /// <summary>How many were lost on the plate.</summary>
    public int Lost { get; }

    /// <summary>How many were lost in wash or cure.</summary>
    public int LostLater { get; }

    /// <summary>Whether some were lost and some stood: otherwise there is only a bound.</summary>
    public bool Known => Lost > 0 && Lost < Count;

    /// <summary>The thinnest column tried, mm.</summary>
    public double Thinnest { get; }

    /// <summary>The thickest column tried, mm.</summary>
    public double Thickest { get; }

    /// <summary>m: d50 goes with exposure time to the minus this power (mean).</summary>
    public double TimeExponent { get; }

    /// <summary>Learns from the trials that have columns; null when none has columns of two diameters.</summary>
    /// <param name="trials">Trials under the same conditions; the last is the reference.</param>
    /// <param name="priors">What is believed before of the effect of exposure.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ColumnSurvival? Of(
        IReadOnlyList<Trial> trials,
        ExposurePriors? priors = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(trials);
        Trial[] withColumns = [.. trials.Where(t => t.Columns.Count > 0)];
        return withColumns.SelectMany(t => t.Columns).Select(c => c.Diameter).Distinct().Count() < 2
            ? null
            : UnseenDrift.Fit<ColumnSurvival>(
                priors ?? ExposurePriors.Default,
                (with, fitWithDrift, c) => new(withColumns, with, fitWithDrift, c),
                cancellation
            );
    }

    /// <summary>
    /// The diameter of which half print at an exposure, with its 95 % interval for the print to come, which holds light
    /// that moves unseen (<see cref="ExposurePriors.LightDrift"/>); where all stood or all were lost there is no
    /// diameter and one end is open.
    /// </summary>
    /// <param name="time">Exposure time in s, above 0.</param>
    public ColumnLimit Limit(double time)
    {
        Interval interval = LimitInterval(time);
        return new ColumnLimit(
            Known ? Weighted.Quantiles(Limits(time), weights, 0.5)[0] : null,
            Lost == 0 ? 0 : interval.Low,
            Lost == Count ? double.PositiveInfinity : interval.High
        );
    }

    /// <summary>The central interval of d50 at an exposure, mm, whatever was lost.</summary>
    /// <param name="time">Exposure time in s, above 0.</param>
    /// <param name="confidence">The share, above 0 and below 1. Default 0.95.</param>
    internal Interval LimitInterval(double time, double confidence = Coverage.Level)
    {
        ColumnSurvival then = ToCome();
        double[] ends = Weighted.Quantiles(then.Limits(time), then.weights, (1 - confidence) / 2, (1 + confidence) / 2);
        return new Interval(ends[0], ends[1]);
    }

    /// <summary>The share of columns of a diameter that should print at an exposure.</summary>
    /// <param name="diameter">Diameter in mm.</param>
    /// <param name="time">Exposure time in s.</param>
    public double Probability(double diameter, double time) => Weighted.Mean(Shares(diameter, time), weights);

    /// <summary>
    /// The 95 % interval of that share at the exposure of the last trial, for the print to come as that of
    /// <see cref="Limit"/>.
    /// </summary>
    /// <param name="diameter">Diameter in mm.</param>
    public Interval ProbabilityInterval(double diameter)
    {
        ColumnSurvival then = ToCome();
        double[] ends = Weighted.Quantiles(
            then.Shares(diameter, referenceTime),
            then.weights,
            Coverage.LowerTail,
            Coverage.UpperTail
        );
        return new Interval(ends[0], ends[1]);
    }

    /// <summary>The diameter from which on a share of columns should print at an exposure, mm.</summary>
    /// <param name="share">The share, above 0 and below 1.</param>
    /// <param name="time">Exposure time in s.</param>
    public double DiameterFor(double share, double time)
    {
        double low = Math.Log(Thinnest / 5),
            high = Math.Log(Thickest * 5);
        for (int i = 0; i < 20; i++)
            if (Probability(Math.Exp((low + high) / 2), time) < share)
                low = (low + high) / 2;
            else
                high = (low + high) / 2;
        return Math.Exp(high);
    }

    /// <summary>
    /// Columns lost on the plate although thinner ones stood in the same print: of the columns at least two R20 steps
    /// thinner, the four thickest (or all, if fewer) all stood. That is adhesion or dirt, not exposure.
    /// </summary>
    /// <param name="trial">One trial.</param>
    public static IReadOnlyList<ColumnOutcome> OutOfOrder(Trial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        return [.. trial.Columns.Where(c => !c.Printed && StoodBelow(trial, c)).OrderBy(c => c.Diameter)];
    }

    /// <summary>
    /// The same for the print to come, with light that may drift: fitted when first asked for, since no order takes it.
    /// </summary>
    internal ColumnSurvival ToCome(CancellationToken cancellation = default) =>
        toCome ??= fitWithDrift?.Invoke(cancellation) ?? this;

    private double[] Limits(double time)
    {
        double x = Math.Log(time / referenceTime);
        return [.. limits.Select((l, i) => Math.Exp(l - exponents[i] * x))];
    }

    private double[] Shares(double diameter, double time)
    {
        double d = Math.Log(diameter),
            x = Math.Log(time / referenceTime);
        return [.. limits.Select((l, i) => 1 / (1 + Math.Exp(-slopes[i] * (d - l + exponents[i] * x))))];
    }

    private static bool StoodBelow(Trial trial, ColumnOutcome column)
    {
        const double TwoSteps = 1.24;
        const int Enough = 4;
        ColumnOutcome[] thinner =
        [
            .. trial
                .Columns.Where(o => o.Diameter <= column.Diameter / TwoSteps)
                .OrderByDescending(o => o.Diameter)
                .Take(Enough),
        ];
        return thinner.Length > 0 && thinner.All(o => o.Printed);
    }
}
