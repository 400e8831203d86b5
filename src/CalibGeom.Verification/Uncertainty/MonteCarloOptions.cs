namespace CalibGeom.Verification.Uncertainty;

/// <summary>How Monte Carlo runs. The same options give the same numbers everywhere. Immutable.</summary>
public sealed record MonteCarloOptions
{
    private const int Batch = 10_000;
    private const int MostOfAll = 100_000_000;

    /// <summary>The defaults: adaptive, two significant digits, at most a million trials, 95 %.</summary>
    public static MonteCarloOptions Default { get; } = new();

    /// <summary>The seed. Default 1.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>
    /// A fixed number of trials, 1000 to 100,000,000; null (default) for the adaptive procedure of JCGM 101, 7.9.
    /// </summary>
    /// <exception cref="ArgumentException">It is outside.</exception>
    public int? Trials
    {
        get;
        init => field = value is { } trials ? Whole(trials, 1000, "number of trials", nameof(Trials)) : null;
    }

    /// <summary>
    /// Significant digits of the standard uncertainty that the adaptive procedure makes stable, 1 or 2. Default 2.
    /// </summary>
    /// <exception cref="ArgumentException">It is neither.</exception>
    public int Digits
    {
        get;
        init => field = (int)Require.Within(value, 1, 2, "number of digits", "", nameof(Digits));
    } = 2;

    /// <summary>
    /// Where the adaptive procedure gives up, 20,000 to 100,000,000, and not before two batches of 100 / (1 -
    /// <see cref="Probability"/>) trials. Default 1,000,000.
    /// </summary>
    /// <exception cref="ArgumentException">It is outside.</exception>
    public int MostTrials
    {
        get;
        init => field = Whole(value, 2 * Batch, "largest number of trials", nameof(MostTrials));
    } = 1_000_000;

    /// <summary>Level of confidence of the intervals, 0.01 to 0.9999. Default 0.95.</summary>
    /// <exception cref="ArgumentException">It is outside.</exception>
    public double Probability
    {
        get;
        init => field = Require.Within(value, 0.01, 0.9999, "level of confidence", "", nameof(Probability));
    } = Coverage.Level;

    internal int BatchSize => Math.Max(Batch, (int)Math.Ceiling(100 / (1 - Probability)));

    /// <summary>The most trials of the adaptive procedure, which needs two batches to see that it is stable.</summary>
    internal int Limit => Math.Max(MostTrials, 2 * BatchSize);

    private static int Whole(int value, int least, string what, string parameter) =>
        (int)Require.Within(value, least, MostOfAll, what, "", parameter);
}
