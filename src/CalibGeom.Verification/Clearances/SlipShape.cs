namespace CalibGeom.Verification.Clearances;

/// <summary>
/// What a reading far from its nominal size looks like when it is about so many times the nominal. Immutable.
/// </summary>
/// <param name="Ratio">Reading over nominal.</param>
/// <param name="Tolerance">How far from that the ratio may be, as a share of it.</param>
/// <param name="Text">What it looks like, as a sentence.</param>
public sealed record SlipShape(double Ratio, double Tolerance, string Text);
