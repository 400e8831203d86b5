using CalibGeom.Planar;
using CalibGeom.Solids;

namespace CalibGeom.TestObjects.Parts.SqueezeTab;

/// <summary>
/// An upright tab on the plate beside the plinth, held by a bar to a post on the plinth. In its own frame the plinth's
/// edge is the line y = 0 and the plinth lies at y &lt; 0. The slots lead along the edge: nothing stands beside the
/// plinth, so that light passes them.
/// </summary>
internal sealed class TabShape
{
    /// <summary>Half the tab along the edge, mm: as deep as the slots are.</summary>
    internal const double HalfDepth = Proportions.TabDepth / 2;

    /// <summary>
    /// Half the bar and the post along the edge, mm: wider than the tab, so that it does not twist when the plinth is
    /// scraped off.
    /// </summary>
    internal const double HalfBar = Proportions.TabBarWidth / 2;

    /// <summary>Where the slots begin and end, mm from the edge.</summary>
    internal const double SlotNear = Proportions.TabGap + Proportions.TabSide,
        SlotFar = SlotNear + Proportions.TabSlotWidth;

    /// <summary>From the plinth's edge to the far side of the tab, mm.</summary>
    internal const double Reach = SlotFar + Proportions.TabSide;

    /// <summary>From the plinth's edge to the far side of the post, mm.</summary>
    internal const double PostReach = Proportions.TabPostInset + Proportions.TabPostDepth;

    /// <summary>What the bar spans freely, mm.</summary>
    internal const double Bridge = Proportions.TabGap + Proportions.TabPostInset;

    private readonly double plinthTop;

    internal TabShape(SqueezeSpec spec, double plinthTop)
    {
        this.plinthTop = plinthTop;
        var slots = new List<(double Floor, double Roof)>();
        double roof = 0;
        foreach (double height in spec.Heights)
        {
            double floor = Grid.Snap(roof + spec.Bar);
            roof = Grid.Snap(floor + height);
            slots.Add((floor, roof));
        }
        Slots = slots;
        BarBottom = Grid.Snap(Math.Max(roof + Proportions.TabCap, plinthTop + Proportions.FloorThickness));
    }

    /// <summary>The slots from the plate upward, mm above it.</summary>
    internal IReadOnlyList<(double Floor, double Roof)> Slots { get; }

    /// <summary>Underside of the bar above the plate, mm.</summary>
    internal double BarBottom { get; }

    /// <summary>Top of the bar above the plate, mm.</summary>
    internal double Top => Grid.Snap(BarBottom + Proportions.TabBar);

    internal IEnumerable<Loft> Lofts(PartPlace place)
    {
        double floor = 0;
        foreach ((double slot, double roof) in Slots)
        {
            yield return Prism(HalfDepth, Proportions.TabGap, Reach, floor, slot);
            yield return Prism(HalfDepth, Proportions.TabGap, SlotNear, slot, roof);
            yield return Prism(HalfDepth, SlotFar, Reach, slot, roof);
            floor = roof;
        }
        // The bar is wider than the tab: the tab's top flares at 45 degrees to carry it.
        double flare = Grid.Snap(BarBottom - (HalfBar - HalfDepth));
        if (flare > floor)
            yield return Prism(HalfDepth, Proportions.TabGap, Reach, floor, flare);
        yield return new Loft(
            place.Rectangle(-HalfDepth, Proportions.TabGap, HalfDepth, Reach),
            flare,
            place.Rectangle(-HalfBar, Proportions.TabGap, HalfBar, Reach),
            BarBottom
        );
        yield return Prism(HalfBar, -PostReach, -Proportions.TabPostInset, plinthTop, BarBottom);
        yield return Prism(HalfBar, -PostReach, Reach, BarBottom, Top);

        Loft Prism(double half, double y0, double y1, double z0, double z1) =>
            Loft.Prism(place.Rectangle(-half, y0, half, y1), z0, z1);
    }
}
