namespace CalibGeom.Plates;

/// <summary>See <see cref="PlacementWish.NearParts"/>.</summary>
internal sealed record NearPartsWish : PlacementWish;
