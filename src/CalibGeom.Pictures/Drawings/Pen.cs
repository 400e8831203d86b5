namespace CalibGeom.Pictures.Drawings;

/// <summary>How a line is drawn. Immutable.</summary>
/// <param name="Ink">Its colour.</param>
/// <param name="Width">Its width in pixels, above 0; 1 by default.</param>
/// <param name="Dash">Length of dashes and of the gaps between them in pixels; 0 (default) for a whole line.</param>
public sealed record Pen(Ink Ink, double Width = 1, double Dash = 0);
