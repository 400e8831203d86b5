using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Maps;

/// <summary>
/// Where the light may be weakest. A plane has its least light in a corner; a bowl that is dark inside has it at its
/// vertex, which is named as the middle however far beside it lies: from the coupons of one print that is not known to
/// the millimetre.
/// </summary>
internal static class WeakestPlaces
{
    private const int Draws = 2000;
    private const double Enough = 0.90;

    internal static IReadOnlyList<WeakPlace> Of(
        PossibleLight possible,
        Surface fitted,
        MapOptions options,
        CancellationToken cancellation
    )
    {
        (double X, double Y)[] places = Places(options);
        double[][] at = Terms(places, options),
            grid = Terms(OneExposure.Grid(options, 5), options);
        var counts = new int[places.Length];
        var lacks = places.Select(_ => new List<(double, double)>()).ToArray();
        var random = new SeededRandom(1);
        for (int i = 0; i < Draws; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            double[] drawn = possible.Draw(random),
                light = [.. at.Select(t => Light(t, drawn))];
            double brightest = grid.Max(t => Light(t, drawn));
            counts[Array.IndexOf(light, light.Min())]++;
            for (int p = 0; p < places.Length; p++)
                lacks[p].Add((1, 1 - Math.Exp(light[p] - brightest)));
        }
        double[] best = fitted.TermValues();
        double most = grid.Max(t => Light(t, best));
        return Named([
            .. places.Select(
                (p, i) =>
                    new WeakPlace(
                        p.X,
                        p.Y,
                        (double)counts[i] / Draws,
                        Mixture.Of(lacks[i]) with
                        {
                            Value = 1 - Math.Exp(Light(at[i], best) - most),
                        }
                    )
            ),
        ]);
    }

    /// <summary>The fewest that hold the weakest place probably enough.</summary>
    private static IReadOnlyList<WeakPlace> Named(IReadOnlyList<WeakPlace> places)
    {
        var named = new List<WeakPlace>();
        double sum = 0;
        foreach (WeakPlace place in places.OrderByDescending(p => p.Probability))
        {
            if (sum >= Enough)
                break;
            named.Add(place);
            sum += place.Probability;
        }
        return named;
    }

    private static (double X, double Y)[] Places(MapOptions options) =>
        [
            (0, 0),
            (-options.Width / 2, -options.Depth / 2),
            (options.Width / 2, -options.Depth / 2),
            (options.Width / 2, options.Depth / 2),
            (-options.Width / 2, options.Depth / 2),
        ];

    private static double[][] Terms(IEnumerable<(double X, double Y)> places, MapOptions options) =>
        [.. places.Select(p => Surface.Terms(p.X, p.Y, options))];

    private static double Light(double[] terms, double[] sizes) => terms.Zip(sizes, (t, s) => t * s).Sum();
}
