namespace CalibGeom.Pictures.Drawings;

/// <summary>One thing in a drawing; drawn in order.</summary>
internal abstract record Shape;
