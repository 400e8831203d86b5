namespace CalibGeom.Verification.Uncertainty;

/// <summary>Runs trials, a fixed number of them or until stable (JCGM 101, 7.9).</summary>
internal static class MonteCarlo
{
    internal static MonteCarloResult Run(Func<SeededRandom, double> trial, MonteCarloOptions options)
    {
        var random = new SeededRandom(options.Seed);
        return options.Trials is { } trials ? Fixed(trial, random, trials, options) : Adaptive(trial, random, options);
    }

    private static MonteCarloResult Fixed(
        Func<SeededRandom, double> trial,
        SeededRandom random,
        int trials,
        MonteCarloOptions options
    )
    {
        double[] values = Draw(trial, random, trials);
        Array.Sort(values);
        return MonteCarloResult.Of(values, options.Probability, stable: true);
    }

    private static MonteCarloResult Adaptive(
        Func<SeededRandom, double> trial,
        SeededRandom random,
        MonteCarloOptions options
    )
    {
        var all = new List<double>();
        var batches = new List<double[]>();
        bool stable = false;
        while (!stable && all.Count + options.BatchSize <= options.Limit)
        {
            double[] values = Draw(trial, random, options.BatchSize);
            all.AddRange(values);
            Array.Sort(values);
            SampleStatistics s = SampleStatistics.Of(values);
            Interval interval = MonteCarloResult.SymmetricOf(values, options.Probability);
            batches.Add([s.Mean, s.StandardDeviation, interval.Low, interval.High]);
            stable =
                batches.Count > 1
                && IsStable(batches, Tolerance(SampleStatistics.Of(all).StandardDeviation, options.Digits));
        }
        double[] sorted = all.ToArray();
        Array.Sort(sorted);
        return MonteCarloResult.Of(sorted, options.Probability, stable);
    }

    /// <summary>Half a unit in the last of the wanted digits of u (JCGM 101, 7.9.2).</summary>
    internal static double Tolerance(double u, int digits)
    {
        if (u == 0)
            return 0;
        int exponent = (int)Math.Floor(Math.Log10(u)) - (digits - 1);
        return 0.5 * Math.Pow(10, exponent);
    }

    private static bool IsStable(List<double[]> batches, double tolerance) =>
        Enumerable
            .Range(0, 4)
            .All(i => 2 * SampleStatistics.Of(batches.Select(b => b[i]).ToArray()).StandardErrorOfMean <= tolerance);

    private static double[] Draw(Func<SeededRandom, double> trial, SeededRandom random, int count)
    {
        double[] values = new double[count];
        for (int i = 0; i < count; i++)
        {
            values[i] = trial(random);
            if (!double.IsFinite(values[i]))
                throw new ArithmeticException("The model gave a value that is not finite in a Monte Carlo trial.");
        }
        return values;
    }
}
