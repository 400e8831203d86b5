using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// Growth and scale of one print along one axis from its sizes alone, by one linear fit: what belongs to the print
/// apart from what its instruments carry to other prints. Immutable.
/// </summary>
public sealed record AxisGrowth
{
    /// <summary><c>x</c> or <c>y</c>.</summary>
    public required string Axis { get; init; }

    /// <summary>Growth per edge, mm; positive where solids grow.</summary>
    public required double Value { get; init; }

    /// <summary>Standard uncertainty from errors of this print and its readings alone, mm.</summary>
    public required double OwnUncertainty { get; init; }

    /// <summary>Standard uncertainty from the instruments' biases, which other prints share, mm.</summary>
    public required double SharedUncertainty { get; init; }

    /// <summary>Effective degrees of freedom of both together.</summary>
    public required double DegreesOfFreedom { get; init; }

    /// <summary>
    /// Proportional change s of all sizes, beside a scale that was typed: -0.002 is 0.2 % too small.
    /// </summary>
    public required double Scale { get; init; }

    /// <summary>Its standard uncertainty, instruments included.</summary>
    public required double ScaleUncertainty { get; init; }

    /// <summary>Whether the readings said too little of scale, so that an assumption entered.</summary>
    public required bool ScaleAssumed { get; init; }

    /// <summary>Both uncertainties together, mm.</summary>
    public double StandardUncertainty =>
        Math.Sqrt(OwnUncertainty * OwnUncertainty + SharedUncertainty * SharedUncertainty);

    /// <summary>
    /// The growths of a print, X first; empty when no size of a box or span was read. Gross errors are left out and a
    /// form that does not hold is raised, as in <see cref="ClearancePrediction"/>; felt fits and other prints play no
    /// part.
    /// </summary>
    /// <param name="features">What was printed.</param>
    /// <param name="readings">What was read of one print, of one coupon.</param>
    /// <param name="options">Assumptions; null for the defaults.</param>
    /// <exception cref="InputException">A reading belongs to no feature, or readings belong to several
    /// coupons.</exception>
    public static IReadOnlyList<AxisGrowth> Of(
        FeatureTable features,
        ReadingSet readings,
        PredictionOptions? options = null
    )
    {
        ArgumentNullException.ThrowIfNull(features);
        ArgumentNullException.ThrowIfNull(readings);
        MatchedReadings matched = MatchedReadings.Of(features, readings);
        if (!matched.Sizes.Any(g => Face.Of(matched.Features[g.Id]) is not null))
            return [];
        ModelFit fit = ModelSearch.Of([matched], options ?? PredictionOptions.Default).Fit;
        return fit.Axes.Select(a => Of(a, fit)).ToArray();
    }

    /// <summary>The readings that the growths of <see cref="Of(FeatureTable, ReadingSet, PredictionOptions)"/> leave out.</summary>
    internal static IReadOnlyList<Finding> LeftOut(
        FeatureTable features,
        ReadingSet readings,
        PredictionOptions options
    )
    {
        MatchedReadings matched = MatchedReadings.Of(features, readings);
        string[] ofReadings = ["reading-far-off", "repeat-odd"];
        List<Finding> findings = [.. matched.Findings.Where(f => ofReadings.Contains(f.Rule))];
        if (matched.Sizes.Any(g => Face.Of(matched.Features[g.Id]) is not null))
            findings.AddRange(
                GrossErrors
                    .Describe(ModelSearch.Of([matched], options))
                    .Select(g => PredictionFindings.Gross(g, prints: 1))
            );
        return findings;
    }

    private static AxisGrowth Of(string axis, ModelFit fit)
    {
        LinearEstimate growth = fit.System.Predict(fit.Growth(axis)),
            scale = fit.System.Predict(fit.Scale(axis));
        return new()
        {
            Axis = axis,
            Value = growth.Value,
            OwnUncertainty = growth.Part(s => !IsInstrument(s)),
            SharedUncertainty = growth.Part(IsInstrument),
            DegreesOfFreedom = growth.DegreesOfFreedom,
            Scale = scale.Value,
            ScaleUncertainty = scale.StandardUncertainty,
            ScaleAssumed = fit.ScaleAssumed(axis),
        };
    }

    private static bool IsInstrument(ErrorSource s) =>
        s.Name.StartsWith(ModelRows.InstrumentPrefix, StringComparison.Ordinal);
}
