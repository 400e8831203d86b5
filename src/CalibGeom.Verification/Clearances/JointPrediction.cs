using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>What to expect of one joint. Not safe to share between threads.</summary>
public sealed class JointPrediction
{
    private readonly Lazy<IReadOnlyDictionary<FeltFit, double>> fits;

    internal JointPrediction(Func<IReadOnlyDictionary<FeltFit, double>> fits) =>
        this.fits = new Lazy<IReadOnlyDictionary<FeltFit, double>>(fits);

    /// <summary>
    /// The fit, such as <c>joint1.fit</c>, where joint j lies between box j and box j + 1, or that of a part of one's
    /// own.
    /// </summary>
    public required FeatureId Fit { get; init; }

    /// <summary>The clearance along each axis that could be predicted, X first.</summary>
    public required IReadOnlyList<AxisClearance> Axes { get; init; }

    /// <summary>The probability that the clearance is over zero on every axis in <see cref="Axes"/>.</summary>
    public required double ProbabilityEnters { get; init; }

    /// <summary>
    /// The probability of each felt fit, adding up to one; after felt fits that were read, it is that of the same
    /// person feeling it again.
    /// </summary>
    public IReadOnlyDictionary<FeltFit, double> Fits => fits.Value;

    /// <summary>The fits that were read for this joint.</summary>
    public required IReadOnlyList<FeltFit> Felt { get; init; }

    /// <summary>
    /// Why no headline is given: what was felt and what was measured exclude each other. Null when there is one.
    /// </summary>
    public required string? Withheld { get; init; }

    /// <summary>The most probable felt fit.</summary>
    public FeltFit Expected => Fits.MaxBy(f => f.Value).Key;
}
