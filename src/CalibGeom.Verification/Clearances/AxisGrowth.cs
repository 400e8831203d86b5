using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// Growth of one print along one axis from its sizes alone, by one linear fit: what belongs to the print apart from
/// what its instruments carry to other prints.
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
        MatchedReadings matched = MatchedReadings.From(features, readings);
        if (!matched.Sizes.Any(g => Face.Of(matched.Features[g.Id]) is not null))
            return [];
        ModelFit fit = ModelSearch.Of([matched], options ?? PredictionOptions.Default).Fit;
        return fit.Axes.Select(a => Of(a, fit.System.Predict(fit.Growth(a)))).ToArray();
    }

    private static AxisGrowth Of(string axis, LinearEstimate growth) =>
        new()
        {
            Axis = axis,
            Value = growth.Value,
            OwnUncertainty = growth.Part(s => !IsInstrument(s)),
            SharedUncertainty = growth.Part(IsInstrument),
            DegreesOfFreedom = growth.DegreesOfFreedom,
        };

    private static bool IsInstrument(ErrorSource s) =>
        s.Name.StartsWith(ModelRows.InstrumentPrefix, StringComparison.Ordinal);
}
