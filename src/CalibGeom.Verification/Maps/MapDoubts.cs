using CalibGeom.Verification.Trends;

namespace CalibGeom.Verification.Maps;

/// <summary>What makes the answer of a map doubtful: several calipers, and bridges apart from all others.</summary>
internal static class MapDoubts
{
    // What light over a plate hardly moves print-through by from a coupon to the middle of all, mm: half the light is
    // 0.08 mm at a penetration depth of 0.12 mm.
    private const double FarApart = 0.15;
    private const int LeastToCompare = 3;

    internal static IEnumerable<Finding> Of(MapResult map)
    {
        if (HasSeveralCalipers(map))
            yield return new Finding(
                "map-calipers",
                Severity.Warning,
                "",
                "The coupons were read with more than one caliper. What one reads is never compared with what "
                    + "another reads: how the light differs between their groups is not seen, and the intervals do "
                    + "not hold it.",
                "Read all coupons with one caliper; it need not be true, its error cancels."
            );
        foreach (IGrouping<string, (MapPoint Point, GaugeValue Value)> series in Read(map).GroupBy(r => r.Value.Series))
        {
            (MapPoint Point, GaugeValue Value)[] all = [.. series];
            if (all.Length < LeastToCompare)
                continue;
            double middle = all.Select(r => r.Value.Value).Order().ElementAt(all.Length / 2);
            foreach ((MapPoint point, GaugeValue value) in all.Where(r => Math.Abs(r.Value.Value - middle) > FarApart))
                yield return new Finding(
                    "map-outlier",
                    Severity.Warning,
                    point.Name,
                    FormattableString.Invariant(
                        $"Its bridge says print-through of {value.Value:0.00} mm, the middle one of the plate {middle:0.00} mm: light hardly differs so much over a plate, yet it counts."
                    ),
                    "Read it again, and look for resin under the beam."
                );
        }
    }

    /// <summary>Whether widths along one axis, or bridges, stand in several series: each is of one caliper.</summary>
    internal static bool HasSeveralCalipers(MapResult map) =>
        map
            .Places.SelectMany(p => p.Point.Values)
            .Where(v => v is { Felt: false, Counted: false })
            .GroupBy(v => (v.Gauge, v.Series.Split('|')[0]))
            .Any(g => g.Select(v => v.Series).Distinct(StringComparer.Ordinal).Skip(1).Any());

    private static IEnumerable<(MapPoint Point, GaugeValue Value)> Read(MapResult map) =>
        from place in map.Places
        from value in place.Point.Values
        where value is { Gauge: Gauge.PrintThrough, Counted: false }
        select (place.Point, value);
}
