namespace CalibGeom.Pictures.Plots;

/// <summary>A point with its bar, in data coordinates.</summary>
/// <param name="X">On the horizontal axis.</param>
/// <param name="Y">On the vertical axis.</param>
/// <param name="Error">Half the length of its bar along the vertical axis; 0 for none.</param>
public readonly record struct PlotPoint(double X, double Y, double Error = 0);
