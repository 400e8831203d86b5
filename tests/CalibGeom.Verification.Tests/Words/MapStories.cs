using CalibGeom.Verification.Maps;
using CalibGeom.Verification.Tests.Maps;

namespace CalibGeom.Verification.Tests.Words;

/// <summary>Nine coupons on a plate, or fewer.</summary>
internal static class MapStories
{
    internal static IEnumerable<Story> All =>
        [
            Of("even", 9, (_, _) => 0),
            Of("even, four coupons", 4, (_, _) => 0),
            Of("a gentle plane", 9, (x, y) => 0.0004 * x - 0.0005 * y),
            Of("a steep plane", 9, (x, y) => 0.004 * x - 0.003 * y),
            Of("a plane along the front", 9, (x, _) => -0.001 * x),
            Of("neither plane nor bowl", 9, (x, y) => (int)(x / 55 + y / 30) % 2 == 0 ? 0 : -0.1),
            Of("darker outside", 9, (x, y) => -(x * x + y * y) / 20000),
            Of("brighter outside", 9, (x, y) => (x * x + y * y) / 20000),
            Of("a gentle plane, four coupons", 4, (x, y) => 0.0006 * x - 0.0010 * y),
            Of("one dark corner, four coupons", 4, (x, y) => x < 0 && y > 0 ? -0.3 : 0),
            Of("level", 5, (_, _) => 0, (x, _) => 2.5 + 0.00002 * x),
            Of("tilted", 5, (_, _) => 0, (x, y) => 2.5 + 0.001 * x - 0.002 * y),
        ];

    private static Story Of(
        string name,
        int coupons,
        Func<double, double, double> light,
        Func<double, double, double>? thickness = null
    ) =>
        new(
            name,
            MapWords.Check(
                LightMap.Run([
                    .. MapShop
                        .Exact(coupons, light, 0.002, 0.01)
                        .Select((p, i) => p with { Thickness = thickness?.Invoke(p.X, p.Y) + 0.002 * (i % 2) }),
                ])
            )
        );
}
