using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tuning;

/// <summary>One print of the log beside what was made of it. Immutable.</summary>
/// <param name="Number">Its number among the prints used, from 1.</param>
/// <param name="Settings">What was set.</param>
/// <param name="Measured">Clearance of the first joint by the readings of this print alone, mean of the axes, mm; null
/// when not measured.</param>
/// <param name="Believed">The clearance that all prints together say of these settings, mm; null when nothing was
/// measured or felt.</param>
/// <param name="Felt">The words, joint by joint; empty when none was felt.</param>
/// <param name="Columns">Columns that came off the plate whole, of those counted; null when not counted.</param>
/// <param name="Slots">Slots that were open, of those there are; null when not counted.</param>
/// <param name="Advised">What was advised after this print.</param>
public sealed record TrialRow(
    int Number,
    ExposureSettings Settings,
    double? Measured,
    double? Believed,
    IReadOnlyList<Readings.FeltFit> Felt,
    Counted? Columns,
    Counted? Slots,
    NextStep Advised
);
