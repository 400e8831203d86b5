using CalibGeom.Verification.Maps;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Maps;

/// <summary>Of plates whose light is known, what was said of them.</summary>
/// <param name="Plates">All.</param>
/// <param name="Seen">Those of which a difference is claimed.</param>
/// <param name="Named">Places named on those, all together.</param>
/// <param name="Held">Of those seen, how many have the truly weakest place among the named.</param>
/// <param name="One">Of those seen, how many have one place named alone.</param>
/// <param name="OneRight">Of these, how many have the right one.</param>
internal readonly record struct MapCount(int Plates, int Seen, int Named, int Held, int One, int OneRight)
{
    internal static MapCount Of(
        SurfaceShape shape,
        double share,
        int coupons,
        int plates,
        bool bridge,
        bool darkInside = false,
        double growth = 0.0025
    )
    {
        var sum = new MapCount(plates, 0, 0, 0, 0, 0);
        for (int i = 0; i < plates; i++)
        {
            var random = new SeededRandom((ulong)(100000 * coupons + i));
            Func<double, double, double> light = MapShop.Light(shape, share, random, darkInside);
            MapResult map = LightMap.Run(MapShop.Print(coupons, light, bridge, random, growth));
            if (map.Differs)
                sum += Of(map.WeakestPlaces, MapShop.WeakestPlace(light));
        }
        return sum;
    }

    public static MapCount operator +(MapCount a, MapCount b) =>
        new(
            a.Plates + b.Plates,
            a.Seen + b.Seen,
            a.Named + b.Named,
            a.Held + b.Held,
            a.One + b.One,
            a.OneRight + b.OneRight
        );

    public override string ToString() =>
        FormattableString.Invariant(
            $"seen {Share(Seen, Plates):0} % | named places right of those {Share(Held, Seen):0} % | {(Seen > 0 ? (double)Named / Seen : 0):0.0} places | one alone {Share(One, Seen):0} %, right {Share(OneRight, One):0} % |"
        );

    private static MapCount Of(IReadOnlyList<WeakPlace> named, (double X, double Y) truth)
    {
        int held = named.Any(p => (p.X, p.Y) == truth) ? 1 : 0,
            one = named.Count == 1 ? 1 : 0;
        return new MapCount(0, 1, named.Count, held, one, held * one);
    }

    private static double Share(int part, int all) => all > 0 ? 100.0 * part / all : 0;
}
