using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Trends.Changes;

/// <summary>What may have moved: the light, which moves every gauge in proportion, or one gauge alone.</summary>
internal sealed record Cause(bool IsLight, double[] Response, double Weight)
{
    // The effects of light are not known: a grid of equal steps in their logarithms, in standard deviations. How the
    // two effects compare is told by gauges that move together, and takes finer steps than how large both are, which
    // only the size that is believed before tells; what lies between two steps of that is added to the uncertainty of
    // the light.
    private static readonly double[] SizeGrid = [-2.4, -1.6, -0.8, 0, 0.8, 1.6, 2.4],
        RatioGrid = [-2.4, -1.8, -1.2, -0.6, 0, 0.6, 1.2, 1.8, 2.4];

    // How likely before any reading: most of what moves is light; the rest (film, temperature, rest) moves one gauge.
    private const double LightShare = 0.75;

    /// <summary>By what share the size may be off because effects are taken in steps, a standard deviation.</summary>
    internal double Coarse { get; private init; }

    /// <summary>mm of growth for a factor e of this cause's size.</summary>
    internal double Growth => Response[(int)Gauge.Growth];

    internal double PrintThrough => Response[(int)Gauge.PrintThrough];

    internal static Cause[] All(IReadOnlyCollection<Gauge> gauges, TrendOptions options)
    {
        bool growth = gauges.Contains(Gauge.Growth),
            through = gauges.Contains(Gauge.PrintThrough);
        Cause[] light =
            growth && through ? Both(options)
            : growth ? One(options.LightEffect, b => [b, options.PenetrationDepth.Median, -options.ColumnExponent])
            : through ? One(options.PenetrationDepth, d => [options.LightEffect.Median, d, -options.ColumnExponent])
            :
            [
                new Cause(
                    true,
                    [options.LightEffect.Median, options.PenetrationDepth.Median, -options.ColumnExponent],
                    1
                ),
            ];
        double all = light.Sum(c => c.Weight);
        var alone = new List<Cause>();
        if (gauges.Count > 1)
            foreach (Gauge gauge in gauges.Order())
            {
                var response = new double[3];
                response[(int)gauge] = gauge switch
                {
                    Gauge.Growth => options.LightEffect.Median,
                    Gauge.PrintThrough => options.PenetrationDepth.Median,
                    _ => options.ColumnExponent,
                };
                alone.Add(new Cause(false, response, 1.0 / gauges.Count));
            }
        double share = alone.Count > 0 ? LightShare : 1;
        return
        [
            .. light.Select(c => c with { Weight = c.Weight / all * share }),
            .. alone.Select(c => c with { Weight = c.Weight * (1 - share) }),
        ];
    }

    /// <summary>
    /// Both effects: with their ratio given, both are larger or smaller by one factor, whose deviation is that of two
    /// numbers that agree.
    /// </summary>
    private static Cause[] Both(TrendOptions options)
    {
        double b = options.LightEffect.LogDeviation,
            d = options.PenetrationDepth.LogDeviation,
            ratio = Math.Sqrt(b * b + d * d),
            size = b * d / ratio;
        return
        [
            .. from r in RatioGrid
            from s in SizeGrid
            select new Cause(
                true,
                [
                    options.LightEffect.Median * Math.Exp(b * b / ratio * r + size * s),
                    options.PenetrationDepth.Median * Math.Exp(-d * d / ratio * r + size * s),
                    -options.ColumnExponent,
                ],
                Math.Exp(-(r * r + s * s) / 2)
            )
            {
                Coarse = Step * size,
            },
        ];
    }

    private static Cause[] One(LogNormalPrior effect, Func<double, double[]> response) =>
        [
            .. SizeGrid.Select(s => new Cause(true, response(effect.At(s)), Math.Exp(-s * s / 2))
            {
                Coarse = Step * effect.LogDeviation,
            }),
        ];

    // The deviation of what is alike anywhere between two steps.
    private static double Step => (SizeGrid[1] - SizeGrid[0]) / Math.Sqrt(12);
}
