namespace CalibGeom.Slicing;

/// <summary>Pixels of one row that follow each other and are covered alike.</summary>
/// <param name="Start">The first column.</param>
/// <param name="End">The column after the last.</param>
/// <param name="Coverage">The covered part of each pixel, above 0 to 1.</param>
public readonly record struct CoverageSpan(int Start, int End, float Coverage);
