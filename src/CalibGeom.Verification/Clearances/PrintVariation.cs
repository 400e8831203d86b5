namespace CalibGeom.Verification.Clearances;

/// <summary>How much growth differs from print to print. Immutable.</summary>
/// <param name="StandardDeviation">Standard deviation of growth per edge among prints, mm.</param>
/// <param name="DegreesOfFreedom">How well it is known; infinite when it was set.</param>
/// <param name="Prints">How many prints were read.</param>
/// <param name="IsSet">Whether it was set rather than assumed or learnt.</param>
public sealed record PrintVariation(double StandardDeviation, double DegreesOfFreedom, int Prints, bool IsSet)
{
    /// <summary>
    /// Share of the variance that X and Y have in common: light and resin change both, the axes' own part is small. No
    /// source.
    /// </summary>
    internal const double CommonShare = 0.8;

    internal double Common => StandardDeviation * Math.Sqrt(CommonShare);

    internal double Separate => StandardDeviation * Math.Sqrt(1 - CommonShare);

    internal static PrintVariation Assumed(PredictionOptions options, int prints) =>
        options.BetweenPrints is { } set
            ? new PrintVariation(set, double.PositiveInfinity, prints, true)
            : new PrintVariation(
                PredictionOptions.DefaultBetweenPrints,
                options.BetweenPrintsDegreesOfFreedom,
                prints,
                false
            );

    /// <summary>
    /// The default pooled with what growths of several prints scatter beyond what their own readings explain (method of
    /// moments), each axis's mean taken out. The axes move together, so prints less one are the degrees of freedom.
    /// </summary>
    /// <param name="options">What is assumed.</param>
    /// <param name="growths">For each axis, each print's growth and its own uncertainty without what prints
    /// share.</param>
    /// <param name="prints">How many prints.</param>
    internal static PrintVariation Of(
        PredictionOptions options,
        IEnumerable<IReadOnlyList<(double Growth, double Own)>> growths,
        int prints
    )
    {
        PrintVariation assumed = Assumed(options, prints);
        IReadOnlyList<(double Growth, double Own)>[] several = growths.Where(g => g.Count > 1).ToArray();
        if (assumed.IsSet || several.Length == 0)
            return assumed;
        double excess = several.Average(axis =>
        {
            double mean = axis.Average(g => g.Growth);
            return axis.Sum(g => (g.Growth - mean) * (g.Growth - mean)) / (axis.Count - 1)
                - axis.Average(g => g.Own * g.Own);
        });
        double before = options.BetweenPrintsDegreesOfFreedom,
            freedom = several.Max(g => g.Count) - 1;
        double variance =
            (before * assumed.StandardDeviation * assumed.StandardDeviation + freedom * Math.Max(0, excess))
            / (before + freedom);
        return assumed with { StandardDeviation = Math.Sqrt(variance), DegreesOfFreedom = before + freedom };
    }
}
