using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// A peg and a hole of one's own, printed next at the same settings: the clearance to expect, which ISO 286 fit that
/// resembles, and the sizes that would give a wanted clearance. Print-to-print variation is included. Immutable.
/// </summary>
public sealed record OwnJoint
{
    /// <summary>Designed size of the peg, mm.</summary>
    public required double PegNominal { get; init; }

    /// <summary>Designed size of the hole, mm.</summary>
    public required double HoleNominal { get; init; }

    /// <summary>Each axis that was measured.</summary>
    public required IReadOnlyList<OwnJointAxis> Axes { get; init; }

    /// <summary>Probability that the clearance is over zero on every axis.</summary>
    public required double ProbabilityEnters { get; init; }

    /// <summary>Probability of each felt fit.</summary>
    public required IReadOnlyDictionary<FeltFit, double> Fits { get; init; }

    /// <summary>
    /// The probability that the clearance lies within each ISO 286 fit on every axis, most probable first; empty above
    /// 50 mm.
    /// </summary>
    public required IReadOnlyList<IsoFitChance> IsoFits { get; init; }

    /// <summary>The wanted clearance per side, mm.</summary>
    public required double Wanted { get; init; }

    /// <summary>
    /// The hole to design for the wanted clearance with this peg, mm: one size for both axes, from their mean;
    /// <see cref="Axes"/> has each. Its interval is that of the sizes which may turn out to be the right ones.
    /// </summary>
    public required Estimate HoleForWanted { get; init; }

    /// <summary>The peg to design for the wanted clearance with this hole, mm, likewise.</summary>
    public required Estimate PegForWanted { get; init; }

    /// <summary>What the answer rests on that was not read: such as how much prints differ.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>
    /// Why no headline is given; null when there is one. As in <see cref="JointPrediction.Withheld"/>.
    /// </summary>
    public required string? Withheld { get; init; }

    /// <summary>The designed clearance per side, mm.</summary>
    public double Design => (HoleNominal - PegNominal) / 2;

    /// <summary>The most probable felt fit.</summary>
    public FeltFit Expected => Fits.MaxBy(f => f.Value).Key;
}
