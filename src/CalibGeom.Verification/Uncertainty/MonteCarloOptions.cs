namespace CalibGeom.Verification.Uncertainty;

/// <summary>How Monte Carlo runs. The same options give the same numbers everywhere.</summary>
public sealed record MonteCarloOptions
{
    private const int Batch = 10_000;

    /// <summary>The defaults: adaptive, two significant digits, at most a million trials, 95 %.</summary>
    public static MonteCarloOptions Default { get; } = new();

    /// <summary>The seed. Default 1.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>
    /// A fixed number of trials, at least 1000; null (default) for the adaptive procedure of JCGM 101, 7.9.
    /// </summary>
    public int? Trials { get; init; }

    /// <summary>
    /// Significant digits of the standard uncertainty that the adaptive procedure makes stable, 1 or 2. Default 2.
    /// </summary>
    public int Digits { get; init; } = 2;

    /// <summary>Where the adaptive procedure gives up. Default 1,000,000.</summary>
    public int MostTrials { get; init; } = 1_000_000;

    /// <summary>Level of confidence of the intervals. Default 0.95.</summary>
    public double Probability { get; init; } = Coverage.Level;

    internal int BatchSize => Math.Max(Batch, (int)Math.Ceiling(100 / (1 - Probability)));

    internal void Check()
    {
        if (Trials is < 1000)
            throw new ArgumentException($"Trials is {Trials}; at least 1000 are needed.", nameof(Trials));
        if (Digits is < 1 or > 2)
            throw new ArgumentException($"Digits is {Digits}; it is 1 or 2.", nameof(Digits));
        if (MostTrials < 2 * BatchSize)
            throw new ArgumentException(
                $"MostTrials is {MostTrials}; at least {2 * BatchSize} are needed.",
                nameof(MostTrials)
            );
        if (Probability is not (> 0 and < 1))
            throw new ArgumentException("Probability lies between 0 and 1.", nameof(Probability));
    }
}
