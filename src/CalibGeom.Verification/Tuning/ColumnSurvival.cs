using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning.Regression;
using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// Which columns come off the plate whole, by Firth's penalised logistic regression on ln(diameter), and on
/// ln(exposure) and rest where
/// these varied. Columns lost in wash or cure count as printed: they speak of handling. Immutable and safe to share
/// between threads.
/// </summary>
public sealed class ColumnSurvival
{
    private const double LeastRatio = 1.05,
        LeastRest = 0.4;
    private readonly BinomialFit fit;
    private readonly double exponent,
        exponentDeviation,
        referenceTime,
        referenceRest;
    private readonly bool timed,
        rested;
    private readonly Lazy<(double Value, double Low, double High)> profile;

    private ColumnSurvival(Trial[] trials, ExposurePriors priors)
    {
        ColumnOutcome[] all = trials.SelectMany(t => t.Columns).ToArray();
        Count = all.Length;
        Lost = all.Count(c => !c.Printed);
        LostLater = all.Count(c => c.Printed && c.Stood != Readings.ColumnStage.Cure);
        Thinnest = all.Min(c => c.Diameter);
        Thickest = all.Max(c => c.Diameter);
        double[] times = trials.Select(t => t.Settings.Time).ToArray(),
            rests = trials.Select(t => t.Settings.Rest).ToArray();
        referenceTime = times[^1];
        referenceRest = rests[^1];
        timed = times.Max() / times.Min() >= LeastRatio;
        rested = rests.Max() - rests.Min() >= LeastRest && trials.Length >= 3 && times.Distinct().Count() >= 2;
        if (rested && !Independent(trials))
            rested = false;
        fit = Fit(trials);
        profile = new(Profile);
        (exponent, exponentDeviation) = Exponent(priors);
        RestEffect = rested ? fit.Coefficients[3] / fit.StandardError(3) : null;
    }

    /// <summary>How many columns were tried in all.</summary>
    public int Count { get; }

    /// <summary>How many were lost on the plate.</summary>
    public int Lost { get; }

    /// <summary>How many were lost in wash or cure.</summary>
    public int LostLater { get; }

    /// <summary>The thinnest column tried, mm.</summary>
    public double Thinnest { get; }

    /// <summary>The thickest column tried, mm.</summary>
    public double Thickest { get; }

    /// <summary>
    /// The coefficient of rest over its standard error, or null when rest did not vary enough; beyond 2 rest itself
    /// matters to columns.
    /// </summary>
    public double? RestEffect { get; }

    /// <summary>d50 goes with exposure time to the minus this power.</summary>
    public double TimeExponent => exponent;

    /// <summary>Learns from the trials that have columns; null when none has.</summary>
    /// <param name="trials">Trials under the same conditions; the last is the reference.</param>
    /// <param name="priors">What is believed before of the effect of exposure.</param>
    public static ColumnSurvival? Learn(IReadOnlyList<Trial> trials, ExposurePriors? priors = null)
    {
        ArgumentNullException.ThrowIfNull(trials);
        Trial[] withColumns = trials.Where(t => t.Columns.Count > 0).ToArray();
        if (withColumns.SelectMany(t => t.Columns).Select(c => c.Diameter).Distinct().Count() < 2)
            return null;
        return new ColumnSurvival(withColumns, priors ?? ExposurePriors.Default);
    }

    /// <summary>
    /// The column limit at an exposure, with its profile interval at the exposure of the last trial and the uncertainty
    /// of the exponent beyond it.
    /// </summary>
    /// <param name="time">Exposure time in s, above 0.</param>
    public ColumnLimit Limit(double time)
    {
        if (Lost == 0)
            return new ColumnLimit(Thinnest * Factor(time), 0, Thinnest * Math.Exp(Spread(time)) * Factor(time));
        if (Lost == Count)
            return new ColumnLimit(
                Thickest * Factor(time),
                Thickest * Math.Exp(-Spread(time)) * Factor(time),
                double.PositiveInfinity
            );
        (double value, double low, double high) = profile.Value;
        double spread = Spread(time);
        double under = Math.Sqrt(Square(value - low) + spread * spread),
            over = Math.Sqrt(Square(high - value) + spread * spread);
        return new ColumnLimit(
            Math.Exp(value) * Factor(time),
            Math.Exp(value - under) * Factor(time),
            Math.Exp(value + over) * Factor(time)
        );
    }

    /// <summary>The share of columns of a diameter that print at an exposure.</summary>
    /// <param name="diameter">Diameter in mm.</param>
    /// <param name="time">Exposure time in s.</param>
    public double Probability(double diameter, double time) =>
        fit.Probability(Covariates(Math.Log(diameter / Factor(time)), referenceTime, referenceRest));

    /// <summary>
    /// The 95 % interval of that share at the exposure of the last trial (Wald on the logit scale).
    /// </summary>
    /// <param name="diameter">Diameter in mm.</param>
    public (double Low, double High) ProbabilityInterval(double diameter)
    {
        Vector<double> x = Vector<double>.Build.Dense(Covariates(Math.Log(diameter), referenceTime, referenceRest));
        double eta = x * fit.Coefficients,
            half = 1.96 * Math.Sqrt(x * fit.Covariance * x);
        return (1 / (1 + Math.Exp(half - eta)), 1 / (1 + Math.Exp(-half - eta)));
    }

    /// <summary>
    /// Columns lost on the plate although thinner ones stood in the same print: of the columns at least two R20 steps
    /// thinner, the four
    /// thickest (or all, if fewer) all stood. That is adhesion or dirt, not exposure.
    /// </summary>
    /// <param name="trial">One trial.</param>
    public static IReadOnlyList<ColumnOutcome> OutOfOrder(Trial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        return trial.Columns.Where(c => !c.Printed && StoodBelow(trial, c)).OrderBy(c => c.Diameter).ToArray();
    }

    private static bool StoodBelow(Trial trial, ColumnOutcome column)
    {
        const double TwoSteps = 1.24;
        const int Enough = 4;
        ColumnOutcome[] thinner = trial
            .Columns.Where(o => o.Diameter <= column.Diameter / TwoSteps)
            .OrderByDescending(o => o.Diameter)
            .Take(Enough)
            .ToArray();
        return thinner.Length > 0 && thinner.All(o => o.Printed);
    }

    private (double Value, double Low, double High) Profile()
    {
        var level = new LevelEstimate(fit, 0.5, 1, Covariates(0, referenceTime, referenceRest));
        (double low, double high) = level.Profile(Math.Log(Thickest / Thinnest) + 2);
        return (level.Value, low, high);
    }

    private double Factor(double time) => Math.Pow(time / referenceTime, -exponent);

    private double Spread(double time) => 1.96 * exponentDeviation * Math.Abs(Math.Log(time / referenceTime));

    private static double Square(double x) => x * x;

    // What the columns say of the exponent, weighed with the prior by inverse variances.
    private (double Value, double Deviation) Exponent(ExposurePriors priors)
    {
        double prior = 1 / (priors.ColumnExponentDeviation * priors.ColumnExponentDeviation),
            slope = fit.Coefficients[1];
        if (!timed || slope <= 0 || Lost == 0 || Lost == Count)
            return (priors.ColumnExponent, priors.ColumnExponentDeviation);
        double own = fit.Coefficients[2] / slope;
        double variance =
            (fit.Covariance[2, 2] - 2 * own * fit.Covariance[1, 2] + own * own * fit.Covariance[1, 1])
            / (slope * slope);
        double weight = 1 / variance;
        double value = (own * weight + priors.ColumnExponent * prior) / (weight + prior);
        return (Math.Max(0, value), Math.Sqrt(1 / (weight + prior)));
    }

    private BinomialFit Fit(Trial[] trials)
    {
        IEnumerable<BinomialGroup> groups = trials.SelectMany(t =>
            t.Columns.GroupBy(c => c.Diameter)
                .Select(g => new BinomialGroup(
                    Covariates(Math.Log(g.Key), t.Settings.Time, t.Settings.Rest),
                    g.Count(),
                    g.Count(c => c.Printed)
                ))
        );
        return BinomialRegression.Fit(groups.ToArray(), penalised: true);
    }

    private double[] Covariates(double logDiameter, double time, double rest)
    {
        var x = new List<double> { 1, logDiameter };
        if (timed)
            x.Add(Math.Log(time / referenceTime));
        if (rested)
            x.Add(rest - referenceRest);
        return x.ToArray();
    }

    private bool Independent(Trial[] trials)
    {
        Matrix<double> design = Matrix<double>.Build.DenseOfRowArrays(
            trials.Select(t => new[] { 1, Math.Log(t.Settings.Time / referenceTime), t.Settings.Rest - referenceRest })
        );
        return design.Rank() == 3 && timed;
    }
}
