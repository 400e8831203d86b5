namespace CalibGeom.Features;

/// <summary>
/// Where something stands in a block of rows, seen with the object's arrow pointing right. Immutable.
/// </summary>
/// <param name="Row">Its row, counted from the front; from 1.</param>
/// <param name="Place">Its place in that row, counted from the left; from 1.</param>
public sealed record GridSpot(int Row, int Place);
