namespace CalibGeom.Slicing;

/// <summary>
/// A place where a wall (<paramref name="Solid"/>) or gap is thin, mm; small when it is a whole contour, as of a column
/// or hole.
/// </summary>
internal readonly record struct ThinSample(double X, double Y, double Width, bool Solid, bool Small);
