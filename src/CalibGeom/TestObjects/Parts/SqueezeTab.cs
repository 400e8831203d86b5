using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts;

/// <summary>
/// An upright tab on the plate beside the plinth, held by a bar to a post on the plinth. In its own frame the plinth's
/// edge is the line
/// across = 0, the plinth lies at across &lt; 0 and the tab's middle at along = 0.
/// </summary>
internal sealed class SqueezeTab(SqueezeSpec spec, double plinthTop)
{
    internal const double Width = Proportions.TabSlotWidth + 2 * Proportions.TabSide;

    /// <summary>From the plinth's edge to the far side of the tab, mm.</summary>
    internal const double Reach = Proportions.TabGap + Proportions.TabDepth;

    /// <summary>From the plinth's edge to the far side of the post, mm.</summary>
    internal const double PostReach = Proportions.TabPostInset + Proportions.TabDepth;

    /// <summary>What the bar spans freely, mm.</summary>
    internal const double Bridge = Proportions.TabGap + Proportions.TabPostInset;

    /// <summary>Underside of the bar above the plate, mm.</summary>
    internal double BarBottom =>
        Grid.Snap(Math.Max(spec.Slots * spec.Pitch + Proportions.TabCap, plinthTop + Proportions.FloorThickness));

    /// <summary>Top of the bar above the plate, mm.</summary>
    internal double Top => BarBottom + Proportions.TabBar;

    /// <summary>Height of the bars between the slots, mm.</summary>
    internal double Web => spec.Pitch - spec.SlotHeight;

    internal IEnumerable<Loft> Lofts(Edge edge)
    {
        const double Near = Proportions.TabGap,
            Far = Reach,
            Half = Width / 2,
            Open = Proportions.TabSlotWidth / 2;
        double floor = 0;
        for (int i = 1; i <= spec.Slots; i++)
        {
            double roof = Grid.Snap(i * spec.Pitch),
                slot = Grid.Snap(i * spec.Pitch - spec.SlotHeight);
            yield return edge.Prism(-Half, Half, Near, Far, floor, slot);
            yield return edge.Prism(-Half, -Open, Near, Far, slot, roof);
            yield return edge.Prism(Open, Half, Near, Far, slot, roof);
            floor = roof;
        }
        yield return edge.Prism(-Half, Half, Near, Far, floor, BarBottom);
        yield return edge.Prism(-Half, Half, -PostReach, -Proportions.TabPostInset, plinthTop, BarBottom);
        yield return edge.Prism(-Half, Half, -PostReach, Far, BarBottom, Top);
    }
}
