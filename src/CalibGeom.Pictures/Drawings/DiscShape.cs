namespace CalibGeom.Pictures.Drawings;

/// <summary>A circle.</summary>
internal sealed record DiscShape(double X, double Y, double Radius, Ink? Fill, Pen? Pen) : Shape;
