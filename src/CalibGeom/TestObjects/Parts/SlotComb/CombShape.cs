using CalibGeom.Planar;
using CalibGeom.Solids;

namespace CalibGeom.TestObjects.Parts.SlotComb;

/// <summary>
/// A bar with tunnels side by side on one floor, their roofs at graded heights, each under more than a millimetre of
/// roof.
/// </summary>
internal sealed class CombShape(SlotsSpec spec, double plinthTop)
{
    private readonly double[] heights = [.. spec.Heights];

    /// <summary>Height of the tunnels' floor above the plate, mm.</summary>
    internal double Floor { get; } =
        Grid.Snap(Math.Max(Proportions.TunnelFloorAbovePlate, plinthTop + Proportions.TunnelFloorThickness));

    /// <summary>Top of the bar above the plate, mm.</summary>
    internal double Top => Floor + heights.Max() + Proportions.TunnelRoof;

    /// <summary>Length of the bar, mm.</summary>
    internal double Length =>
        heights.Length * (Proportions.TunnelWidth + Proportions.TunnelWall) + Proportions.TunnelWall;

    /// <summary>The middle of a tunnel along the bar, from the bar's own middle, mm.</summary>
    internal double MiddleOf(int tunnel) => StartOf(tunnel) + Proportions.TunnelWidth / 2;

    internal IEnumerable<Loft> Lofts(PartPlace place)
    {
        double depth = Proportions.TunnelDepth / 2,
            half = Length / 2;
        yield return Loft.Prism(place.Rectangle(-half, -depth, half, depth), plinthTop, Floor);
        double[] roofs = [.. heights.Select(h => Grid.Snap(Floor + h))];
        double[] levels = [Floor, .. Ascending.Of(roofs), Grid.Snap(Top)];
        for (int i = 0; i + 1 < levels.Length; i++)
            foreach ((double from, double to) in Walls(roofs, levels[i]))
                yield return Loft.Prism(place.Rectangle(from, -depth, to, depth), levels[i], levels[i + 1]);
    }

    /// <summary>What stands between the tunnels that are still open above a level.</summary>
    private IEnumerable<(double From, double To)> Walls(double[] roofs, double level)
    {
        double from = -Length / 2;
        for (int i = 0; i < roofs.Length; i++)
        {
            if (roofs[i] <= level)
                continue;
            yield return (from, StartOf(i));
            from = StartOf(i) + Proportions.TunnelWidth;
        }
        yield return (from, Length / 2);
    }

    private double StartOf(int tunnel) =>
        -Length / 2 + Proportions.TunnelWall + tunnel * (Proportions.TunnelWall + Proportions.TunnelWidth);
}
