using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Trends.Changes;

/// <summary>What may have moved: the light, which moves every gauge in proportion, or one gauge alone.</summary>
internal sealed record Cause(bool IsLight, double[] Response, double Weight)
{
    // The effects of light are not known: a grid of equal steps in their logarithms, in standard deviations. The data
    // may
    // tell the effect to less than a step, which is then added to the uncertainty of the light.
    private static readonly double[] GrowthGrid = [-2.4, -1.6, -0.8, 0, 0.8, 1.6, 2.4],
        ThroughGrid = [-2, -1, 0, 1, 2];

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
        var light =
            from b in growth ? GrowthGrid : [0]
            from d in through ? ThroughGrid : [0]
            select new Cause(
                true,
                [options.LightEffect.At(b), options.PenetrationDepth.At(d), -options.ColumnExponent],
                Math.Exp(-(b * b + d * d) / 2)
            );
        double all = light.Sum(c => c.Weight);
        double coarse = Math.Min(
            growth ? Step(GrowthGrid, options.LightEffect) : double.PositiveInfinity,
            through ? Step(ThroughGrid, options.PenetrationDepth) : double.PositiveInfinity
        );
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
            .. light.Select(c =>
                c with
                {
                    Weight = c.Weight / all * share,
                    Coarse = double.IsFinite(coarse) ? coarse : 0,
                }
            ),
            .. alone.Select(c => c with { Weight = c.Weight * (1 - share) }),
        ];
    }

    private static double Step(double[] grid, LogNormalPrior prior) =>
        (grid[1] - grid[0]) * prior.LogDeviation / Math.Sqrt(12);
}
