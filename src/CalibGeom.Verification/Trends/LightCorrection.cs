using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Trends;

/// <summary>The exposure that gives back the dose that a loss of light took. Immutable.</summary>
/// <param name="Settings">The settings to print and confirm.</param>
/// <param name="Low">The exposure in s at the lower end of the 95 % interval of the light.</param>
/// <param name="High">The exposure in s at the upper end.</param>
public sealed record LightCorrection(ExposureSettings Settings, double Low, double High);
