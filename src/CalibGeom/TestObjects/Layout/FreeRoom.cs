using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Layout;

/// <summary>
/// Where a footprint may stand among parts that stand already, asked for many places: all distances are worked out
/// once.
/// </summary>
internal sealed class FreeRoom
{
    private readonly Rect[] solids;
    private readonly Rect[] taken;
    private readonly (Rect Room, double Distance)[] lanes;
    private readonly (Rect Room, Rect Solid, double Distance)[] own;

    internal FreeRoom(IReadOnlyList<Placement> placed, PartFootprint form)
    {
        solids = [.. form.Solids];
        taken = [.. placed.SelectMany(p => p.Placed.Solids.Select(s => s.Grow(Placement.Gap(p.Placed, form))))];
        lanes =
        [
            .. from p in placed
            from lane in p.Placed.Lanes
            let distance = Placement.DistanceFrom(lane.Kind, form.Height)
            where distance is not null
            select (lane.Room, distance.Value),
        ];
        own =
        [
            .. from p in placed
            from lane in form.Lanes
            let distance = Placement.DistanceFrom(lane.Kind, p.Placed.Height)
            where distance is not null
            from solid in p.Placed.Solids
            select (lane.Room, solid, distance.Value),
        ];
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
