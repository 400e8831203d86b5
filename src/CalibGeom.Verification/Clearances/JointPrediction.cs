using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>What to expect of one joint.</summary>
public sealed class JointPrediction
{
    private readonly Lazy<IReadOnlyDictionary<FeltFit, double>> fits;

    internal JointPrediction(
        int number,
        IReadOnlyList<AxisClearance> axes,
        double enters,
        Func<IReadOnlyDictionary<FeltFit, double>> fits,
        IReadOnlyList<FeltFit> felt
    )
    {
        Number = number;
        Axes = axes;
        ProbabilityEnters = enters;
        this.fits = new Lazy<IReadOnlyDictionary<FeltFit, double>>(fits);
        Felt = felt;
    }

    /// <summary>The joint's number; joint j lies between box j and box j + 1.</summary>
    public int Number { get; }

    /// <summary>The clearance along each axis that could be predicted, X first.</summary>
    public IReadOnlyList<AxisClearance> Axes { get; }

    /// <summary>The probability that the clearance is over zero on every axis in <see cref="Axes"/>.</summary>
    public double ProbabilityEnters { get; }

    /// <summary>
    /// The probability of each felt fit, adding up to one; after felt fits that were read, it is that of feeling it
    /// again.
    /// </summary>
    public IReadOnlyDictionary<FeltFit, double> Fits => fits.Value;

    /// <summary>The fits that were read for this joint.</summary>
    public IReadOnlyList<FeltFit> Felt { get; }

    /// <summary>The most probable felt fit.</summary>
    public FeltFit Expected => Fits.MaxBy(f => f.Value).Key;
}
