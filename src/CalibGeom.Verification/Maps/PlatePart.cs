namespace CalibGeom.Verification.Maps;

/// <summary>A rectangle of the plate, mm in plate coordinates.</summary>
/// <param name="MinX">Left.</param>
/// <param name="MaxX">Right.</param>
/// <param name="MinY">Front.</param>
/// <param name="MaxY">Back.</param>
public readonly record struct PlatePart(double MinX, double MaxX, double MinY, double MaxY);
