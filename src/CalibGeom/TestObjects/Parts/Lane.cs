namespace CalibGeom.TestObjects.Parts;

/// <summary>Room beside a part that others leave free.</summary>
/// <param name="Room">The room seen from above, mm.</param>
/// <param name="Kind">What for.</param>
public readonly record struct Lane(Rect Room, LaneKind Kind);
