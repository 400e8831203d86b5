using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tests.Tuning.League;

/// <summary>What a policy ended with.</summary>
internal sealed record Played(ExposureSettings Kept, int Prints, bool Stopped)
{
    /// <summary>How many prints it takes when nobody cuts it off at five; 12 when it goes on beyond.</summary>
    internal int PrintsToStop { get; init; } = Prints;

    /// <summary>Whether the 95 % intervals held the truth at the settings kept; null where nothing was told.</summary>
    internal Held? Held { get; init; }
}
