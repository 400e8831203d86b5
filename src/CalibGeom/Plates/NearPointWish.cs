namespace CalibGeom.Plates;

/// <summary>See <see cref="PlacementWish.Near"/>.</summary>
internal sealed record NearPointWish(double X, double Y) : PlacementWish;
