using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning.Regression;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// The residuals of trials and priors, in standard deviations. Parameters: a, ln b, ln c, ln tau, the X-Y difference,
/// one bias a caliper, one
/// misfit a setting, one deviation a print, and where asked for the coefficient of ln(t/t0) squared.
/// </summary>
internal sealed class GrowthModel
{
    internal const int A = 0,
        B = 1,
        C = 2,
        Tau = 3,
        Difference = 4,
        FirstBias = 5;
    private const double CurvatureDeviation = 0.02;
    private readonly ExposurePriors priors;
    private readonly Trial[] trials;
    private readonly string[] instruments;
    private readonly double[] biases;
    private readonly int[] instrumentOf,
        settingOf;
    private readonly bool curved;
    private readonly bool rested;

    internal GrowthModel(
        IReadOnlyList<Trial> trials,
        ExposurePriors priors,
        double referenceTime,
        bool curved = false,
        bool rested = true
    )
    {
        this.trials = trials.ToArray();
        this.priors = priors;
        this.curved = curved;
        this.rested = rested;
        ReferenceTime = referenceTime;
        instruments = this.trials.Select(t => t.Instrument).Distinct(StringComparer.Ordinal).ToArray();
        instrumentOf = this.trials.Select(t => Array.IndexOf(instruments, t.Instrument)).ToArray();
        biases = instruments.Select(name => this.trials.Where(t => t.Instrument == name).Max(Bias)).ToArray();
        var settings = new List<ExposureSettings>();
        settingOf = new int[this.trials.Length];
        for (int i = 0; i < this.trials.Length; i++)
        {
            int found = settings.FindIndex(s => s.SameProcess(this.trials[i].Settings));
            settingOf[i] = found >= 0 ? found : settings.Count;
            if (found < 0)
                settings.Add(this.trials[i].Settings);
        }
        Settings = settings;
    }

    internal double ReferenceTime { get; }

    internal IReadOnlyList<ExposureSettings> Settings { get; }

    internal int FirstMisfit => FirstBias + instruments.Length;

    internal int Curvature => FirstPrint + trials.Length;

    private int FirstPrint => FirstMisfit + Settings.Count;

    internal double[] Start()
    {
        var start = new double[Curvature + (curved ? 1 : 0)];
        start[A] = priors.GrowthMean;
        start[B] = Math.Log(priors.TimeEffect.Median);
        start[C] = Math.Log(priors.RestEffect.Median);
        start[Tau] = Math.Log(priors.RestTime.Median);
        return start;
    }

    /// <summary>The formula's growth at exposure and rest, without misfit.</summary>
    internal double Growth(IReadOnlyList<double> p, double time, double rest)
    {
        double x = Math.Log(time / ReferenceTime);
        double room = rested ? Math.Exp(p[C]) * (1 - Math.Exp(-rest / Math.Exp(p[Tau]))) : 0;
        return p[A] + Math.Exp(p[B]) * x - room + (curved ? p[Curvature] * x * x : 0);
    }

    internal double[] Residuals(double[] p)
    {
        var r = new List<double>(16 + 4 * trials.Length)
        {
            (p[A] - priors.GrowthMean) / priors.GrowthDeviation,
            (p[B] - Math.Log(priors.TimeEffect.Median)) / priors.TimeEffect.LogDeviation,
            (p[C] - Math.Log(priors.RestEffect.Median)) / priors.RestEffect.LogDeviation,
            (p[Tau] - Math.Log(priors.RestTime.Median)) / priors.RestTime.LogDeviation,
            p[Difference] / priors.AxisDifference,
        };
        for (int k = 0; k < instruments.Length; k++)
            r.Add(p[FirstBias + k] / Math.Max(biases[k], 1e-9));
        for (int k = 0; k < Settings.Count; k++)
            r.Add(p[FirstMisfit + k] / priors.LackOfFit);
        if (curved)
            r.Add(p[Curvature] / CurvatureDeviation);
        for (int i = 0; i < trials.Length; i++)
            AddTrial(r, p, i);
        return r.ToArray();
    }

    /// <summary>How many numbers were observed.</summary>
    internal int Observations => trials.Sum(t => (t.GrowthX is null ? 0 : 1) + (t.GrowthY is null ? 0 : 1));

    internal LeastSquaresFit Fit() => LeastSquares.Minimise(Residuals, Start(), damping: 0.01);

    private void AddTrial(List<double> r, double[] p, int i)
    {
        Trial trial = trials[i];
        double growth =
            Growth(p, trial.Settings.Time, trial.Settings.Rest)
            + p[FirstMisfit + settingOf[i]]
            + p[FirstPrint + i]
            + trial.Settings.EdgeOffset;
        double bias = p[FirstBias + instrumentOf[i]],
            half = p[Difference] / 2;
        r.Add(p[FirstPrint + i] / priors.BetweenPrints);
        if (trial.GrowthX is { } x)
            r.Add((growth + half + bias - x.Value) / x.Uncertainty);
        if (trial.GrowthY is { } y)
            r.Add((growth - half + bias - y.Value) / y.Uncertainty);
        foreach (JointOutcome joint in trial.Joints)
            if (joint.Fit is { } fit)
                r.Add(Felt(fit, joint.Designed - 2 * growth, joint.DesignedY - 2 * growth));
    }

    private double Felt(FeltFit fit, double x, double y)
    {
        double probability =
            x == y ? priors.Fits.Probability(fit, x) : priors.Fits.Probability(fit, Math.Min(x, y), (x + y) / 2);
        return Math.Sqrt(Math.Max(0, -2 * Math.Log(Math.Max(probability, 1e-200))));
    }

    private static double Bias(Trial trial) => Math.Max(trial.GrowthX?.Bias ?? 0, trial.GrowthY?.Bias ?? 0);
}
