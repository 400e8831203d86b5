namespace CalibGeom.Plates;

/// <summary>See <see cref="PlacementWish.Corner"/>.</summary>
internal sealed record CornerWish : PlacementWish;
