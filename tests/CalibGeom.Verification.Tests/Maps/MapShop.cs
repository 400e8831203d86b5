using CalibGeom.Verification.Maps;
using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Maps;

/// <summary>
/// Plates of 150 x 90 mm with coupons, light drawn at random: even, a plane or a bowl of some depth,
/// dark outside or inside.
/// </summary>
internal static class MapShop
{
    private const double BridgeUncertainty = 0.010;
    private static readonly MapOptions Plate = MapOptions.Default;

    internal static (double X, double Y)[] Places(int count) =>
        count switch
        {
            4 => [(-55, -30), (55, -30), (55, 30), (-55, 30)],
            5 => [(-55, -30), (55, -30), (55, 30), (-55, 30), (0, 0)],
            _ => [.. from x in new[] { -55, 0, 55 } from y in new[] { -30, 0, 30 } select ((double)x, (double)y)],
        };

    internal static Func<double, double, double> Light(
        SurfaceShape shape,
        double share,
        SeededRandom random,
        bool darkInside = false
    )
    {
        if (shape == SurfaceShape.Even)
            return (_, _) => 0;
        double turn = random.Uniform(0, 2 * Math.PI),
            middleX = random.Uniform(-15, 15),
            middleY = random.Uniform(-10, 10);
        double Raw(double x, double y) =>
            shape == SurfaceShape.Plane
                ? x / 75 * Math.Cos(turn) + y / 45 * Math.Sin(turn)
                : (darkInside ? 1 : -1) * ((x - middleX) * (x - middleX) + (y - middleY) * (y - middleY));
        double[] all = Grid().Select(p => Raw(p.X, p.Y)).ToArray();
        double low = all.Min(),
            range = all.Max() - low;
        return (x, y) => Math.Log(1 - share) * (1 - (Raw(x, y) - low) / range);
    }

    /// <summary>Coupons without scatter, with stated uncertainties of growth and, where told, print-through.</summary>
    internal static MapPoint[] Exact(
        int count,
        Func<double, double, double> light,
        double growthUncertainty,
        double? throughUncertainty = null
    )
    {
        IEnumerable<GaugeValue> At(double l)
        {
            yield return new GaugeValue(Gauge.Growth, "x", 0.02 + 0.035 * l, growthUncertainty);
            yield return new GaugeValue(Gauge.Growth, "y", 0.01 + 0.035 * l, growthUncertainty);
            if (throughUncertainty is { } u)
                yield return new GaugeValue(Gauge.PrintThrough, "z", 0.3 + 0.12 * l, u);
        }
        return [.. Places(count).Select((p, i) => new MapPoint($"A{i + 1}", p.X, p.Y, At(light(p.X, p.Y))))];
    }

    /// <summary>
    /// Coupons with two boxes measured once by the default caliper (growth to 0.0025 mm along each axis, or to what is
    /// given) and, where asked for, a bridge read once (repeatability 0.008 mm, form 0.006 mm), which differs by
    /// 0.005 mm more from coupon to coupon than the map is told.
    /// </summary>
    internal static MapPoint[] Print(
        int count,
        Func<double, double, double> light,
        bool bridge,
        SeededRandom random,
        double growthUncertainty = 0.0025
    )
    {
        double bias = 0.0115 * random.Normal(),
            print = 0.005 * random.Normal();
        return Places(count)
            .Select(
                (p, i) =>
                {
                    double l = light(p.X, p.Y),
                        g = 0.02 + print + bias + 0.035 * l;
                    var values = new List<GaugeValue>
                    {
                        new(Gauge.Growth, "x", g + growthUncertainty * random.Normal(), growthUncertainty),
                        new(Gauge.Growth, "y", g + growthUncertainty * random.Normal(), growthUncertainty),
                    };
                    if (bridge)
                    {
                        double z = 0.3 + 0.12 * l + 0.005 * random.Normal() + BridgeUncertainty * random.Normal();
                        values.Add(new(Gauge.PrintThrough, "z", z, BridgeUncertainty));
                    }
                    return new MapPoint($"A{i + 1}", p.X, p.Y, values);
                }
            )
            .ToArray();
    }

    /// <summary>The corner that is weakest, or the middle, 0, 0, where that is weaker than any.</summary>
    internal static (double X, double Y) WeakestPlace(Func<double, double, double> light) =>
        new[] { (0.0, 0.0), (-75, -45), (75, -45), (75, 45), (-75, 45) }.MinBy(c => light(c.Item1, c.Item2));

    private static IEnumerable<(double X, double Y)> Grid() =>
        from i in Enumerable.Range(0, 31)
        from j in Enumerable.Range(0, 31)
        select (Plate.Width * (i / 30.0 - 0.5), Plate.Depth * (j / 30.0 - 0.5));
}
