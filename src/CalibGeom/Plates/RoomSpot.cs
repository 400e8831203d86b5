namespace CalibGeom.Plates;

/// <summary>A free place: a footprint and how far its own origin was moved, mm.</summary>
internal sealed record RoomSpot(Footprint Footprint, double X, double Y);
