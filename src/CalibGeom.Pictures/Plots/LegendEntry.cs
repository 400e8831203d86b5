using CalibGeom.Pictures.Drawings;

namespace CalibGeom.Pictures.Plots;

/// <summary>One name in a legend with a sample: a line, a filled patch, or a point of a radius above 0.</summary>
internal sealed record LegendEntry(string Name, Ink? Fill, Pen? Pen, double Radius);
