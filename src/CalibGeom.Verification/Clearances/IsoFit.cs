using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>A hole-basis fit of ISO 286. Immutable.</summary>
/// <param name="Name">Such as <c>H7/g6</c>.</param>
/// <param name="HoleGrade">Grade of the hole H.</param>
/// <param name="Shaft">Letter of the shaft.</param>
/// <param name="ShaftGrade">Grade of the shaft.</param>
public sealed record IsoFit(string Name, int HoleGrade, char Shaft, int ShaftGrade)
{
    /// <summary>Smallest and largest clearance across both sides, mm; negative is interference.</summary>
    /// <param name="nominal">Nominal size, over 0 and at most 50 mm.</param>
    /// <exception cref="ArgumentException">The size is out of range.</exception>
    public Interval Clearance(double nominal)
    {
        Interval shaft = Iso286.Shaft(Shaft, ShaftGrade, nominal);
        return new Interval(0 - shaft.High, Iso286.Tolerance(HoleGrade, nominal) - shaft.Low);
    }
}
