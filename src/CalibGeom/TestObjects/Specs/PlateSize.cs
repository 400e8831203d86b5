namespace CalibGeom.TestObjects.Specs;

/// <summary>How much room a printer has: its build plate and height, mm. In JSON <c>[x, y, z]</c>.</summary>
/// <param name="X">Along X, mm.</param>
/// <param name="Y">Along Y, mm.</param>
/// <param name="Z">Upward from the plate, mm.</param>
public readonly record struct PlateSize(double X, double Y, double Z);
