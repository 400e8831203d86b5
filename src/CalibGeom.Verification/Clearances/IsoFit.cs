namespace CalibGeom.Verification.Clearances;

/// <summary>A hole-basis fit of ISO 286. Immutable.</summary>
/// <param name="Name">Such as <c>H7/g6</c>.</param>
/// <param name="HoleGrade">Grade of the hole H.</param>
/// <param name="Shaft">Letter of the shaft.</param>
/// <param name="ShaftGrade">Grade of the shaft.</param>
public sealed record IsoFit(string Name, int HoleGrade, char Shaft, int ShaftGrade)
{
    /// <summary>Smallest and largest clearance across both sides; negative is interference.</summary>
    /// <param name="nominal">Nominal size, over 0 and at most 50 mm.</param>
    /// <returns>Clearances in micrometres.</returns>
    /// <exception cref="ArgumentException">The size is out of range.</exception>
    public (double Least, double Most) Clearance(double nominal)
    {
        (double lower, double upper) = Iso286.Shaft(Shaft, ShaftGrade, nominal);
        return (-upper, Iso286.Tolerance(HoleGrade, nominal) - lower);
    }
}
