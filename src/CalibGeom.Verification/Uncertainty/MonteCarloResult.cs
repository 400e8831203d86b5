namespace CalibGeom.Verification.Uncertainty;

/// <summary>What Monte Carlo found (JCGM 101, clause 7). Immutable.</summary>
/// <param name="Mean">The mean of the trials.</param>
/// <param name="StandardUncertainty">Their standard deviation.</param>
/// <param name="Symmetric">The probabilistically symmetric coverage interval.</param>
/// <param name="Shortest">The shortest coverage interval.</param>
/// <param name="Trials">How many trials.</param>
/// <param name="Stable">Whether the adaptive procedure reached its tolerance; true when the number of trials was
/// fixed.</param>
public sealed record MonteCarloResult(
    double Mean,
    double StandardUncertainty,
    Interval Symmetric,
    Interval Shortest,
    int Trials,
    bool Stable
)
{
    internal static MonteCarloResult Of(double[] sorted, double probability, bool stable)
    {
        SampleStatistics s = SampleStatistics.Of(sorted);
        return new MonteCarloResult(
            s.Mean,
            s.StandardDeviation,
            SymmetricOf(sorted, probability),
            ShortestOf(sorted, probability),
            sorted.Length,
            stable
        );
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
