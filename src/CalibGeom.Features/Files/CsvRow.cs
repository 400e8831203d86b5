namespace CalibGeom.Features.Files;

/// <summary>One row of a CSV file. Immutable.</summary>
/// <param name="Line">The line it starts on, from 1.</param>
/// <param name="Fields">Its fields, unquoted.</param>
public sealed record CsvRow(int Line, IReadOnlyList<string> Fields);
