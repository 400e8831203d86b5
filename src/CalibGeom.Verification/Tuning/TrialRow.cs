using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tuning;

/// <summary>One print of the log beside what was made of it. Immutable.</summary>
public sealed record TrialRow
{
    /// <summary>Its number among the prints used, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>What was set.</summary>
    public required ExposureSettings Settings { get; init; }

    /// <summary>
    /// Clearance of the first joint by the readings of this print alone, mean of the axes, mm; null when not
    /// measured.
    /// </summary>
    public required double? Measured { get; init; }

    /// <summary>
    /// The clearance that all prints together say of these settings, mm; null when nothing was measured or felt.
    /// </summary>
    public required double? Believed { get; init; }

    /// <summary>The words, joint by joint; empty when none was felt.</summary>
    public required IReadOnlyList<Readings.FeltFit> Felt { get; init; }

    /// <summary>Columns that came off the plate whole, of those counted; null when not counted.</summary>
    public required Counted? Columns { get; init; }

    /// <summary>Slots that were open, of those there are; null when not counted.</summary>
    public required Counted? Slots { get; init; }

    /// <summary>
    /// What was advised after this print; null before the newest <see cref="Tuner.MostAdvised"/>.
    /// </summary>
    public required NextStep? Advised { get; init; }
}
