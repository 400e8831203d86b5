namespace CalibGeom.Pictures.Drawings;

/// <summary>Shapes of which only the part inside a rectangle is seen.</summary>
internal sealed record ClipShape(double X, double Y, double Width, double Height, Shape[] Shapes) : Shape;
