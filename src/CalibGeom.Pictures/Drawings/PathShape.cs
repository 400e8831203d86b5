namespace CalibGeom.Pictures.Drawings;

/// <summary>Polylines or, when closed, rings filled by the even-odd rule.</summary>
internal sealed record PathShape((double X, double Y)[][] Lines, bool Closed, Ink? Fill, Pen? Pen) : Shape;
