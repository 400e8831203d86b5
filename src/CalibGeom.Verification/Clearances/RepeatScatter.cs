using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>The standard deviation of an instrument's repeats and how well it is known.</summary>
/// <param name="S">Standard deviation, mm.</param>
/// <param name="Freedom">Degrees of freedom; infinite when it was stated.</param>
internal sealed record RepeatScatter(double S, double Freedom)
{
    /// <summary>A group whose repeats differ this much more than the instrument's keeps a scatter of its own.</summary>
    private const double Own = 3;

    /// <summary>What each instrument scatters: its repeats pooled with what is known of such instruments.</summary>
    internal static Dictionary<string, RepeatScatter> Of(
        IEnumerable<MatchedReadings> prints,
        PredictionOptions options
    ) =>
        prints
            .SelectMany(p => p.Sizes.Where(g => IsWidthOrHeight(g.Id)).Concat(p.References))
            .GroupBy(g => g.Instrument.Name)
            .ToDictionary(g => g.Key, g => Pooled(g.ToArray(), options), StringComparer.Ordinal);

    /// <summary>
    /// Tunnels, tabs and columns are read with wires, pins or soft jaws: their repeats say nothing of a caliper's.
    /// </summary>
    private static bool IsWidthOrHeight(FeatureId id) =>
        id.Part is not (KnownFeatures.Slot or KnownFeatures.Column or KnownFeatures.Squeeze);

    /// <summary>Standard uncertainty of a group's mean.</summary>
    internal double OfMean(ReadingGroup group)
    {
        double own = group.Count > 1 ? Math.Sqrt(group.SumOfSquares / (group.Count - 1)) : 0;
        return (own > Own * S ? own : S) / Math.Sqrt(group.Count);
    }

    /// <summary>
    /// Whether a mean's scatter is more than its display's step: values that scatter were rounded before, so that the
    /// scatter has the step in it and only the larger counts (ISO 22514-7, from memory).
    /// </summary>
    internal bool ShowsStep(ReadingGroup group) => OfMean(group) >= OfStep(group.Instrument);

    /// <summary>Standard uncertainty of one value for the step of its display.</summary>
    internal static double OfStep(Instrument instrument) => instrument.Resolution / Math.Sqrt(12);

    private static RepeatScatter Pooled(ReadingGroup[] groups, PredictionOptions options)
    {
        if (groups[0].Instrument.Repeatability is { } known)
            return new RepeatScatter(known, double.PositiveInfinity);
        double before = options.RepeatabilityDegreesOfFreedom;
        int freedom = groups.Sum(g => g.Count - 1);
        double squares =
            before * Instrument.DefaultRepeatability * Instrument.DefaultRepeatability
            + groups.Sum(g => g.SumOfSquares);
        return new RepeatScatter(Math.Sqrt(squares / (before + freedom)), before + freedom);
    }
}
