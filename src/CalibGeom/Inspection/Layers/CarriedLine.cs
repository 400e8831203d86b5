namespace CalibGeom.Inspection.Layers;

/// <summary>A straight line of pixels with nothing below them between two pixels that carry them.</summary>
/// <param name="First">The number of its first pixel.</param>
/// <param name="From">The carrier before the first pixel.</param>
/// <param name="To">The carrier after the last.</param>
/// <param name="Length">mm.</param>
internal readonly record struct CarriedLine(int First, (int X, int Y) From, (int X, int Y) To, double Length);
