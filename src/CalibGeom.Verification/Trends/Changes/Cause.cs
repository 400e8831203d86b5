namespace CalibGeom.Verification.Trends.Changes;

/// <summary>What may have moved: the light, which moves every gauge in proportion, or one gauge alone.</summary>
internal sealed record Cause(bool IsLight, double[] Response, double Weight)
{
    // Nodes and weights of Gauss and Hermite for a standard normal quantity, five points.
    private static readonly (double At, double Share)[] Nodes =
    [
        (0, 8.0 / 15),
        (1.355626179974266, 0.2220759220056126),
        (-1.355626179974266, 0.2220759220056126),
        (2.856970013872806, 0.0112574113277207),
        (-2.856970013872806, 0.0112574113277207),
    ];

    // How likely before any reading: most of what moves is light; the rest (film, temperature, rest) moves one gauge.
    private const double LightShare = 0.75;

    /// <summary>mm of growth for a factor e of this cause's size.</summary>
    internal double Growth => Response[(int)Gauge.Growth];

    internal double PrintThrough => Response[(int)Gauge.PrintThrough];

    internal static Cause[] All(IReadOnlyCollection<Gauge> gauges, TrendOptions options)
    {
        bool growth = gauges.Contains(Gauge.Growth),
            through = gauges.Contains(Gauge.PrintThrough);
        var light =
            from b in growth ? Nodes : [(0, 1)]
            from d in through ? Nodes : [(0, 1)]
            select new Cause(
                true,
                [options.LightEffect.At(b.At), options.PenetrationDepth.At(d.At), -options.ColumnExponent],
                b.Share * d.Share
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
            .. light.Select(c => c with { Weight = c.Weight * share }),
            .. alone.Select(c => c with { Weight = c.Weight * (1 - share) }),
        ];
    }
}
