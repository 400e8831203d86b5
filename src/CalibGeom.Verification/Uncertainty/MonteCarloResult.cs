namespace CalibGeom.Verification.Uncertainty;

/// <summary>What Monte Carlo found (JCGM 101, clause 7). Immutable.</summary>
public sealed record MonteCarloResult
{
    /// <summary>The mean of the trials.</summary>
    public required double Mean { get; init; }

    /// <summary>Their standard deviation.</summary>
    public required double StandardUncertainty { get; init; }

    /// <summary>The probabilistically symmetric coverage interval.</summary>
    public required Interval Symmetric { get; init; }

    /// <summary>The shortest coverage interval.</summary>
    public required Interval Shortest { get; init; }

    /// <summary>How many trials.</summary>
    public required int Trials { get; init; }

    /// <summary>
    /// Whether the adaptive procedure reached its tolerance; true when the number of trials was fixed.
    /// </summary>
    public required bool Stable { get; init; }

    internal static MonteCarloResult Of(double[] sorted, double probability, bool stable)
    {
        SampleStatistics s = SampleStatistics.Of(sorted);
        return new MonteCarloResult
        {
            Mean = s.Mean,
            StandardUncertainty = s.StandardDeviation,
            Symmetric = SymmetricOf(sorted, probability),
            Shortest = ShortestOf(sorted, probability),
            Trials = sorted.Length,
            Stable = stable,
        };
    }

    /// <summary>JCGM 101, 7.7.2.</summary>
    internal static Interval SymmetricOf(double[] sorted, double probability)
    {
        int q = Span(sorted, probability),
            r = (sorted.Length - q + 1) / 2;
        return new Interval(sorted[Math.Max(0, r - 1)], sorted[Math.Min(sorted.Length - 1, r - 1 + q)]);
    }

    /// <summary>JCGM 101, 7.7.4.</summary>
    internal static Interval ShortestOf(double[] sorted, double probability)
    {
        int q = Span(sorted, probability),
            best = 0;
        for (int r = 1; r + q < sorted.Length; r++)
            if (sorted[r + q] - sorted[r] < sorted[best + q] - sorted[best])
                best = r;
        return new Interval(sorted[best], sorted[best + q]);
    }

    private static int Span(double[] sorted, double probability) =>
        Math.Min(sorted.Length - 1, (int)(probability * sorted.Length + 0.5));
}
