namespace CalibGeom.Verification.Logs;

/// <summary>A trial as it stands in a log. Immutable.</summary>
/// <param name="Number">Its number, from 1 in the order of the file. Numbers never change: a trial that was taken back
/// keeps its own.</param>
/// <param name="Trial">The trial.</param>
/// <param name="TakenBack">Whether a later line takes it back.</param>
public sealed record LogEntry(int Number, Trial Trial, bool TakenBack);
