using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Layout;

/// <summary>A part in its place.</summary>
/// <param name="Item">The part.</param>
/// <param name="Form">Which of its forms, in the part's own frame.</param>
/// <param name="X">Where that frame's origin is, mm.</param>
/// <param name="Y">Where that frame's origin is, mm.</param>
internal sealed record Placement(LayoutItem Item, Footprint Form, double X, double Y)
{
    /// <summary>What it covers and keeps free, in place.</summary>
    internal Footprint Placed { get; } = Form.Move(X, Y);

    internal Placement MoveTo(double x, double y) => new(Item, Form, x, y);

    /// <summary>Whether a part in some place keeps all distances to this one.</summary>
    internal bool Allows(LayoutItem other, Footprint form, double x, double y)
    {
        double gap = Item.GapTo(other);
        foreach (Rect solid in Placed.Solids)
        foreach (Rect r in form.Solids)
            if (solid.Grow(gap).Meets(r.Move(x, y)))
                return false;
        foreach (Rect lane in Placed.Lanes)
        foreach (Rect r in form.Solids)
            if (Blocks(lane, r.Move(x, y), other))
                return false;
        foreach (Rect lane in form.Lanes)
        foreach (Rect r in Placed.Solids)
            if (Blocks(lane.Move(x, y), r, Item))
                return false;
        return true;
    }

    private static bool Blocks(Rect lane, Rect solid, LayoutItem owner) =>
        owner.IsLabel ? lane.DistanceTo(solid) < Proportions.LabelToLane - Rect.Slack : lane.Meets(solid);
}
