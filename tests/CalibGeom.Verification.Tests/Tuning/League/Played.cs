using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tests.Tuning.League;

/// <summary>What a policy ended with.</summary>
internal sealed record Played(ExposureSettings Kept, int Prints, bool Stopped);
