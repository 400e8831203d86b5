namespace CalibGeom.Pictures.Drawings;

/// <summary>A raster, stretched to a rectangle.</summary>
internal sealed record ImageShape(double X, double Y, double Width, double Height, byte[] Png) : Shape;
