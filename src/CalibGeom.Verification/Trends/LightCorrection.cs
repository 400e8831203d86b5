using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Trends;

/// <summary>
/// The exposure that makes up for a loss of light: the one most likely to bring clearance back within its tolerance.
/// Immutable.
/// </summary>
/// <param name="Settings">The settings to print and confirm.</param>
/// <param name="Low">The shorter exposure in s, at the upper end of the 95 % interval of the light.</param>
/// <param name="High">The longer exposure in s, at the lower end.</param>
/// <param name="Probability">That clearance (where no growth was read: light) then is within its tolerance again, if
/// what changed is light; at least <see cref="TrendAnswer.Lands"/>.</param>
public sealed record LightCorrection(ExposureSettings Settings, double Low, double High, double Probability);
