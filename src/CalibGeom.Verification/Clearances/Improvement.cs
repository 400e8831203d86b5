namespace CalibGeom.Verification.Clearances;

/// <summary>
/// A measurement that could be added and what it would do to the widest clearance interval. Immutable.
/// </summary>
/// <param name="Action">What to measure, as an instruction.</param>
/// <param name="Effort">How many readings it takes.</param>
/// <param name="StandardUncertainty">Largest standard uncertainty of a clearance after it, mm.</param>
/// <param name="Ratio">That over the present one.</param>
public sealed record Improvement(string Action, int Effort, double StandardUncertainty, double Ratio)
{
    /// <summary>Whether it would halve the uncertainty.</summary>
    public bool Halves => Ratio <= 0.5;
}
