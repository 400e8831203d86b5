using CalibGeom.Verification.Logs;
using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Tuning;

/// <summary>From trials to the next settings.</summary>
public static class Tuner
{
    private const double CurveStep = 0.25;

    /// <summary>Learns from the trials under the conditions of the last one and says what to do next.</summary>
    /// <param name="trials">All trials in the order they were printed, at least one.</param>
    /// <param name="options">What is wanted; defaults when null.</param>
    /// <exception cref="ArgumentException">There is no trial, or an option is out of range.</exception>
    public static TuningResult Advise(IReadOnlyList<Trial> trials, TuneOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(trials);
        options ??= TuneOptions.Default;
        options.Check();
        if (trials.Count == 0)
            throw new ArgumentException("There is no trial to learn from.", nameof(trials));
        TrialConditions conditions = trials[^1].Conditions;
        var apart = trials
            .Select((t, i) => (Number: i + 1, Trial: t, Differences: t.Conditions.DifferencesFrom(conditions)))
            .Where(p => p.Differences.Count > 0)
            .Select(p => (p.Number, p.Trial, string.Join(", ", p.Differences)))
            .ToArray();
        Trial[] used = trials.Where(t => t.Conditions.DifferencesFrom(conditions).Count == 0).ToArray();
        ExposureResponse response = ExposureResponse.Learn(used, options.Priors);
        ColumnSurvival? columns = ColumnSurvival.Learn(used, options.Priors);
        PrintThroughResponse? light = PrintThroughResponse.Learn(used, options.Priors);
        double target = TargetGrowth(used[^1], options);
        IReadOnlyList<JointChance> chances = Chances(used[^1], used[^1].Settings, response, target, options);
        NextStep next = new Planner(used, response, light, target, options).Next(chances);
        var result = new TuningResult
        {
            Conditions = conditions,
            Trials = used,
            KeptApart = apart,
            TargetGrowth = target,
            Response = response,
            Columns = columns,
            PrintThrough = light,
            Curve = Curve(used[^1], next.Settings.EdgeOffset, response, columns, light, target, options),
            Chances = chances,
            Next = next,
            Findings = [],
            Options = options,
        };
        return result with { Findings = PlainWords.Of(result) };
    }

    /// <summary>
    /// Only the recommendation, without curve, columns and words; all trials must be under the same conditions.
    /// </summary>
    internal static NextStep Next(IReadOnlyList<Trial> trials, TuneOptions options)
    {
        ExposureResponse response = ExposureResponse.Learn(trials, options.Priors);
        double target = TargetGrowth(trials[^1], options);
        IReadOnlyList<JointChance> chances = Chances(trials[^1], trials[^1].Settings, response, target, options);
        return new Planner(trials, response, PrintThroughResponse.Learn(trials, options.Priors), target, options).Next(
            chances
        );
    }

    /// <summary>The clearance to expect in every joint and axis at some settings.</summary>
    /// <param name="result">What the trials say.</param>
    /// <param name="settings">The settings.</param>
    public static IReadOnlyList<JointChance> ChancesAt(TuningResult result, ExposureSettings settings)
    {
        ArgumentNullException.ThrowIfNull(result);
        return Chances(result.Trials[^1], settings, result.Response, result.TargetGrowth, result.Options);
    }

    private static double TargetGrowth(Trial last, TuneOptions options) =>
        options.Target is { } target ? (Joints(last)[0].Designed - target) / 2 : 0;

    private static IReadOnlyList<JointOutcome> Joints(Trial last) =>
        last.Joints.Count > 0 ? last.Joints : [new JointOutcome("joint1", 0.05)];

    private static JointChance[] Chances(
        Trial last,
        ExposureSettings settings,
        ExposureResponse response,
        double targetGrowth,
        TuneOptions options
    )
    {
        GrowthPrediction growth = response.At(settings),
            difference = response.AxisDifference;
        return Joints(last)
            .SelectMany(joint =>
                new[] { ("x", 1), ("y", -1) }.Select(axis =>
                {
                    double designed = axis.Item2 > 0 ? joint.Designed : joint.DesignedY,
                        target = designed - 2 * targetGrowth;
                    double clearance = designed - 2 * (growth.Mean + axis.Item2 * difference.Mean / 2);
                    double deviation =
                        2
                        * Math.Sqrt(
                            growth.Uncertainty * growth.Uncertainty
                                + difference.Uncertainty * difference.Uncertainty / 4
                        );
                    double chance =
                        Normal.CDF(clearance, deviation, target + options.Tolerance)
                        - Normal.CDF(clearance, deviation, target - options.Tolerance);
                    return new JointChance(joint.Id, axis.Item1, target, clearance, deviation, chance);
                })
            )
            .ToArray();
    }

    private static CurvePoint[] Curve(
        Trial last,
        double edgeOffset,
        ExposureResponse response,
        ColumnSurvival? columns,
        PrintThroughResponse? light,
        double target,
        TuneOptions options
    )
    {
        var points = new List<CurvePoint>();
        for (double rest = 0; rest <= options.MostRest + 1e-9; rest += CurveStep)
        {
            double time = response.TimeFor(target, rest, edgeOffset);
            if (time is < 0.05 or > 300)
                continue;
            double spread = Math.Exp(
                1.96 * response.At(new ExposureSettings(time, rest)).Uncertainty / response.TimeEffect
            );
            points.Add(
                new CurvePoint(
                    rest,
                    time,
                    time / spread,
                    time * spread,
                    response.RestGain(rest),
                    columns?.Limit(time),
                    light?.At(time).Mean,
                    last.Cycle.PrintTime(
                        new ExposureSettings(time, rest),
                        last.Conditions.Layer,
                        options.ProductionHeight
                    )
                )
            );
        }
        return points.ToArray();
    }
}
