namespace CalibGeom.Pictures.Drawings;

/// <summary>A line of text on its baseline.</summary>
internal sealed record TextShape(double X, double Y, string Text, TextStyle Style) : Shape;
