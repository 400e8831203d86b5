using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Layout;

/// <summary>
/// Where a footprint may stand among parts that stand already, asked for many places: all distances are worked out
/// once.
/// </summary>
internal sealed class FreeRoom
{
    private readonly Rect[] solids;
    private readonly List<Rect> taken = [];
    private readonly List<(Rect Room, double Distance)> lanes = [];
    private readonly List<(Rect Room, Rect Solid, double Distance)> own = [];

    internal FreeRoom(IReadOnlyList<Placement> placed, PartFootprint form)
    {
        solids = [.. form.Solids];
        // Loops, not queries: what a query over structs is made of is compiled when a program first runs it.
        foreach (PartFootprint other in placed.Select(p => p.Placed))
        {
            foreach (Rect solid in other.Solids)
                taken.Add(solid.Grow(Placement.Gap(other, form)));
            foreach (Lane lane in other.Lanes)
                if (Placement.DistanceFrom(lane.Kind, form.Height) is { } distance)
                    lanes.Add((lane.Room, distance));
            foreach (Lane lane in form.Lanes)
                if (Placement.DistanceFrom(lane.Kind, other.Height) is { } distance)
                    foreach (Rect solid in other.Solids)
                        own.Add((lane.Room, solid, distance));
        }
    }

    /// <summary>Whether the footprint keeps all distances when it is moved by so much, mm.</summary>
    internal bool IsFree(double x, double y)
    {
        foreach (Rect solid in solids)
        {
            Rect moved = solid.Move(x, y);
            foreach (Rect other in taken)
                if (other.Meets(moved))
                    return false;
            foreach ((Rect room, double distance) in lanes)
                if (Placement.IsTooNear(room, moved, distance))
                    return false;
        }
        foreach ((Rect room, Rect solid, double distance) in own)
            if (Placement.IsTooNear(room.Move(x, y), solid, distance))
                return false;
        return true;
    }
}
