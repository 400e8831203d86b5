namespace CalibGeom.Pictures.Plots;

/// <summary>A place of a band, in data coordinates.</summary>
/// <param name="X">On the horizontal axis.</param>
/// <param name="Low">The lower border on the vertical axis.</param>
/// <param name="High">The upper border on the vertical axis.</param>
public readonly record struct BandPoint(double X, double Low, double High);
