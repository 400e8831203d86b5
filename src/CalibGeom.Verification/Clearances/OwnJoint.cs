using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// A peg and a hole of one's own, printed next at the same settings: the clearance to expect, which ISO 286 fit that
/// resembles, and the sizes that would
/// give a wanted clearance. Print-to-print variation is included.
/// </summary>
/// <param name="PegNominal">Designed size of the peg, mm.</param>
/// <param name="HoleNominal">Designed size of the hole, mm.</param>
/// <param name="Axes">Each axis that was measured.</param>
/// <param name="ProbabilityEnters">Probability that the clearance is over zero on every axis.</param>
/// <param name="Fits">Probability of each felt fit.</param>
/// <param name="IsoFits">The probability that the clearance lies within each ISO 286 fit on every axis, most probable
/// first; empty above 50 mm.</param>
/// <param name="Wanted">The wanted clearance per side, mm.</param>
/// <param name="HoleForWanted">The hole to design for the wanted clearance with this peg, mm: one size for both axes,
/// from their mean; <see cref="Axes"/> has each.</param>
/// <param name="PegForWanted">The peg to design for the wanted clearance with this hole, mm, likewise.</param>
public sealed record OwnJoint(
    double PegNominal,
    double HoleNominal,
    IReadOnlyList<OwnJointAxis> Axes,
    double ProbabilityEnters,
    IReadOnlyDictionary<FeltFit, double> Fits,
    IReadOnlyList<(string Fit, double Probability)> IsoFits,
    double Wanted,
    double HoleForWanted,
    double PegForWanted
)
{
    /// <summary>The designed clearance per side, mm.</summary>
    public double Design => (HoleNominal - PegNominal) / 2;

    /// <summary>The most probable felt fit.</summary>
    public FeltFit Expected => Fits.MaxBy(f => f.Value).Key;
}
