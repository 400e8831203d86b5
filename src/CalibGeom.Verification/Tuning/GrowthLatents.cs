using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// What is normal in measured growths, in one vector: a bias for each caliper, growth along X less Y, a misfit for each
/// pair of exposure and rest, a deviation for each print. The caliper's bias stands apart from all that prints can
/// teach.
/// </summary>
internal sealed class GrowthLatents
{
    /// <summary>
    /// No reading is taken for more precise than this, mm: a log may say so, but sums of it and of what prints share
    /// would no longer hold.
    /// </summary>
    private const double Finest = 1e-6;

    private readonly double[] priorDeviations;
    private readonly int differenceAt,
        firstMisfit,
        firstPrint;
    private readonly int[] instrumentOf,
        settingOf;
    private readonly (int Print, double Share, double Value, double Uncertainty)[] readings;

    internal GrowthLatents(Trial[] trials, ExposurePriors priors)
    {
        string[] instruments = [.. trials.Select(t => t.Instrument).Distinct(StringComparer.Ordinal)];
        instrumentOf = [.. trials.Select(t => Array.IndexOf(instruments, t.Instrument))];
        var settings = new List<ExposureSettings>();
        settingOf = new int[trials.Length];
        for (int i = 0; i < trials.Length; i++)
        {
            int found = settings.FindIndex(s => s.SameProcess(trials[i].Settings));
            settingOf[i] = found >= 0 ? found : settings.Count;
            if (found < 0)
                settings.Add(trials[i].Settings);
        }
        Settings = settings;
        readings = [.. trials.SelectMany((t, i) => Of(t, i))];
        differenceAt = instruments.Length;
        firstMisfit = differenceAt + 1;
        firstPrint = firstMisfit + settings.Count;
        priorDeviations = new double[firstPrint + trials.Length];
        for (int k = 0; k < instruments.Length; k++)
            priorDeviations[k] = trials.Where((_, i) => instrumentOf[i] == k).Max(Bias);
        priorDeviations[differenceAt] = priors.AxisDifference;
        for (int k = firstMisfit; k < firstPrint; k++)
            priorDeviations[k] = priors.LackOfFit;
        LastInstrument = instrumentOf.LastOrDefault();
        MisfitDeviation = priors.LackOfFit;
        Shared =
        [
            .. Enumerable.Range(0, instruments.Length).Select(k => Column(r => instrumentOf[r.Print] == k ? 1 : 0, k)),
            Column(r => r.Share, differenceAt),
        ];
    }

    /// <summary>Every measured growth with its print, its share of X less Y, and its own uncertainty.</summary>
    internal IReadOnlyList<(int Print, double Share, double Value, double Uncertainty)> Readings => readings;

    internal IReadOnlyList<ExposureSettings> Settings { get; }

    internal int LastInstrument { get; }

    internal double Difference(double[] drawn) => drawn[differenceAt];

    internal double Bias(double[] drawn) => drawn[LastInstrument];

    internal double Misfit(double[] drawn, int setting) => drawn[firstMisfit + setting];

    /// <summary>What a print adds to the formula: misfit of its setting and its own deviation.</summary>
    internal double OfPrint(double[] drawn, int print) =>
        drawn[firstMisfit + settingOf[print]] + drawn[firstPrint + print];

    /// <summary>Standard deviation of what a setting's growth misses the formula by.</summary>
    internal double MisfitDeviation { get; }

    /// <summary>
    /// What readings share beyond setting and print, a column each, times its deviation before: the bias of each
    /// caliper, and what X is more than Y.
    /// </summary>
    internal double[][] Shared { get; }

    internal int SettingOf(int reading) => settingOf[readings[reading].Print];

    /// <summary>
    /// Draws given the data: a draw of before, corrected by what it misses of the data (G. Matheron).
    /// </summary>
    internal double[] Draw(GrowthSpread around, double betweenPrints, double[] left, Func<double> normal)
    {
        var drawn = new double[priorDeviations.Length];
        for (int k = 0; k < drawn.Length; k++)
            drawn[k] = Prior(k, betweenPrints) * normal();
        if (left.Length == 0)
            return drawn;
        var missed = new double[left.Length];
        for (int j = 0; j < missed.Length; j++)
            missed[j] = left[j] - Sum(drawn, j) - readings[j].Uncertainty * normal();
        double[] weights = around.Solve(missed);
        for (int j = 0; j < weights.Length; j++)
        {
            int print = readings[j].Print;
            Move(drawn, instrumentOf[print], betweenPrints, weights[j]);
            Move(drawn, differenceAt, betweenPrints, weights[j] * readings[j].Share);
            Move(drawn, firstMisfit + settingOf[print], betweenPrints, weights[j]);
            Move(drawn, firstPrint + print, betweenPrints, weights[j]);
        }
        return drawn;
    }

    private double Prior(int k, double betweenPrints) => k < firstPrint ? priorDeviations[k] : betweenPrints;

    private void Move(double[] drawn, int k, double betweenPrints, double by) =>
        drawn[k] += Prior(k, betweenPrints) * Prior(k, betweenPrints) * by;

    private double Sum(double[] drawn, int j) =>
        drawn[instrumentOf[readings[j].Print]]
        + readings[j].Share * drawn[differenceAt]
        + OfPrint(drawn, readings[j].Print);

    private double[] Column(
        Func<(int Print, double Share, double Value, double Uncertainty), double> part,
        int latent
    ) => [.. readings.Select(r => part(r) * priorDeviations[latent])];

    private static IEnumerable<(int, double, double, double)> Of(Trial trial, int print)
    {
        if (trial.GrowthX is { } x)
            yield return (print, 0.5, x.Value, Math.Max(Finest, x.Uncertainty));
        if (trial.GrowthY is { } y)
            yield return (print, -0.5, y.Value, Math.Max(Finest, y.Uncertainty));
    }

    private static double Bias(Trial trial) => Math.Max(trial.GrowthX?.Bias ?? 0, trial.GrowthY?.Bias ?? 0);
}
