using CalibGeom.Verification.Uncertainty;
using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Trends.Changes;

/// <summary>From all ways of having changed to what to say of the change.</summary>
internal sealed class ChangeReader
{
    // The least probable ways, which together have at most this share, are left out of the sums.
    private const double Negligible = 1e-4;

    // Middles of ten equal shares of a normal law, for times that are no linear function of the size.
    private static readonly double[] Tenths = Enumerable
        .Range(0, 10)
        .Select(i => Normal.InvCDF(0, 1, (i + 0.5) / 10))
        .ToArray();

    private readonly ChangeModel model;
    private readonly TrendOptions options;
    private readonly int last;
    private readonly bool readsGrowth,
        readsWordsAlone;
    private readonly (double Weight, ChangeComponent Part)[] parts;

    internal ChangeReader(ChangeModel model, TrendOptions options, int last, CancellationToken cancellation = default)
    {
        (this.model, this.options, this.last) = (model, options, last);
        parts = Likely([.. model.Components(last, cancellation)]);
        readsGrowth = model.Filter.Points.SelectMany(p => p.Values).Any(v => v.Gauge == Gauge.Growth);
        readsWordsAlone = TrendPoint.AreWordsAlone(model.Filter.Points);
    }

    /// <summary>The most probable single way.</summary>
    internal ChangeComponent Best => parts[0].Part;

    /// <summary>The share of the change by now that had come by a coupon, on average over all ways.</summary>
    internal double MovedBy(int coupon) =>
        parts.Sum(p => p.Weight * p.Part.Case.Course[coupon] / p.Part.Case.Course[last]);

    internal TrendChange Read()
    {
        var gauges = model.Filter.Points.SelectMany(p => p.Values).Select(v => v.Gauge).ToHashSet();
        double drifts = Share(p => p.Case.Drifts),
            beyond = Beyond();
        Amount light = Mixture.Of(Now(p => p.Cause.IsLight, _ => 1, p => p.Cause.Coarse));
        return new TrendChange
        {
            LogLight = light,
            Correction = Correction(light) is { } c ? new DoseLost(c.LogLight, c.Probability) : null,
            Growth = gauges.Contains(Gauge.Growth) ? Mixture.Of(Now(_ => true, p => p.Cause.Growth)) : null,
            PrintThrough = gauges.Contains(Gauge.PrintThrough)
                ? Mixture.Of(Now(_ => true, p => p.Cause.PrintThrough))
                : null,
            LightProbability = Share(p => p.Cause.IsLight),
            DriftProbability = drifts,
            PerCoupon = Mixture.Of(
                parts
                    .Where(p => p.Part.Case.Drifts && p.Part.Cause.IsLight)
                    .Select(p => (p.Weight, p.Part.Mean, p.Part.Deviation))
                    .DefaultIfEmpty((1, 0, 0))
                    .ToArray()
            ),
            Since = Since(),
            BeyondProbability = beyond,
            Crosses = drifts > 0.5 && beyond < 0.5 ? Crosses() : null,
        };
    }

    /// <summary>
    /// The change of ln(light) that, taken back by the exposure, most probably puts growth within the tolerance again
    /// (where no growth was read, the light), with that probability; null when nothing speaks for light.
    /// </summary>
    private (double LogLight, double Probability)? Correction(Amount light)
    {
        var ways = parts.Where(p => p.Part.Cause.IsLight).ToArray();
        double all = ways.Sum(p => p.Weight);
        if (all <= 0)
            return null;
        double Lands(double taken) =>
            ways.Sum(p =>
            {
                double course = p.Part.Case.Course[last],
                    mean = p.Part.Mean * course,
                    more = mean * p.Part.Cause.Coarse,
                    deviation = Math.Max(
                        1e-9,
                        Math.Sqrt(p.Part.Deviation * p.Part.Deviation * course * course + more * more)
                    ),
                    reach = Limit(p.Part.Cause, growthFirst: true);
                return p.Weight
                    * (Normal.CDF(mean, deviation, taken + reach) - Normal.CDF(mean, deviation, taken - reach));
            }) / all;
        return Enumerable
            .Range(0, 41)
            .Select(i => light.Low + i / 40.0 * (light.High - light.Low))
            .Select(taken => (taken, Lands(taken)))
            .MaxBy(t => t.Item2);
    }

    /// <summary>The ways by falling weight, which adds up to 1.</summary>
    private static (double Weight, ChangeComponent Part)[] Likely(ChangeComponent[] all)
    {
        double top = all.Max(c => c.LogWeight),
            sum = all.Sum(c => Math.Exp(c.LogWeight - top)),
            kept = 0;
        var likely = new List<(double Weight, ChangeComponent Part)>();
        foreach (ChangeComponent part in all.OrderByDescending(c => c.LogWeight))
        {
            if (kept >= (1 - Negligible) * sum)
                break;
            double weight = Math.Exp(part.LogWeight - top);
            likely.Add((weight, part));
            kept += weight;
        }
        return [.. likely.Select(p => (p.Weight / kept, p.Part))];
    }

    private double Share(Func<ChangeComponent, bool> which) => parts.Where(p => which(p.Part)).Sum(p => p.Weight);

    private (double, double, double)[] Now(
        Func<ChangeComponent, bool> which,
        Func<ChangeComponent, double> scale,
        Func<ChangeComponent, double>? coarse = null
    ) =>
        parts
            .Where(p => which(p.Part))
            .Select(p =>
            {
                double factor = p.Part.Case.Course[last] * scale(p.Part);
                double more = p.Part.Mean * (coarse?.Invoke(p.Part) ?? 0),
                    deviation = Math.Sqrt(p.Part.Deviation * p.Part.Deviation + more * more);
                return (p.Weight, p.Part.Mean * factor, deviation * Math.Abs(factor));
            })
            .DefaultIfEmpty((1, 0, 0))
            .ToArray();

    /// <summary>The size at which a way of changing leaves the tolerance.</summary>
    private double Limit(Cause cause, bool growthFirst = false)
    {
        double light = -Math.Log(1 - options.LightTolerance),
            clearance = cause.Growth > 0 ? options.Tolerance / (2 * cause.Growth) : double.PositiveInfinity;
        if (growthFirst)
            return readsGrowth ? clearance : light;
        return cause.IsLight ? Math.Min(light, clearance)
            : double.IsFinite(clearance) ? clearance
            : light;
    }

    private double Beyond() =>
        parts.Sum(p =>
        {
            double mean = p.Part.Mean * p.Part.Case.Course[last],
                deviation = Math.Max(1e-12, p.Part.Deviation * p.Part.Case.Course[last]),
                limit = Limit(p.Part.Cause);
            return p.Weight * (Normal.CDF(mean, deviation, -limit) + 1 - Normal.CDF(mean, deviation, limit));
        });

    private Amount Since()
    {
        double[] times = model.Times;
        double Before(int n) => n > 0 ? times[n - 1] : times[0];
        double After(int n) => n < last ? times[n + 1] : times[last];
        // A step lies between two coupons; a drift began nearer to its coupon than to the next ones.
        var spans = parts
            .Select(p =>
            {
                int at = p.Part.Case.From;
                return p.Part.Case.Drifts
                    ? (p.Weight, Low: (times[at] + Before(at)) / 2, High: (times[at] + After(at)) / 2)
                    : (p.Weight, Low: Before(at), High: times[at]);
            })
            .ToArray();
        // Words change when the truth has crossed a range, so that they cannot tell when it set out.
        double low = readsWordsAlone ? times[0] : Mixture.Quantile(spans, Coverage.LowerTail);
        return new Amount(Mixture.Quantile(spans, 0.5), low, Mixture.Quantile(spans, Coverage.UpperTail));
    }

    private Amount Crosses()
    {
        double now = model.Times[last];
        var times = parts
            .Where(p => p.Part.Case.Drifts)
            .SelectMany(p =>
                Tenths.Select(z =>
                {
                    double size = p.Part.Mean + z * p.Part.Deviation,
                        left = Limit(p.Part.Cause) - Math.Abs(size) * p.Part.Case.Course[last];
                    double after = left <= 0 ? 0 : left / Math.Max(1e-9, Math.Abs(size)) * model.Spacing;
                    return (p.Weight, now + after);
                })
            )
            .ToArray();
        double Far(double time) => time > now + 1000 * model.Spacing ? double.PositiveInfinity : time;
        return new Amount(
            Far(Mixture.Quantile(times, 0.5)),
            Far(Mixture.Quantile(times, Coverage.LowerTail)),
            Far(Mixture.Quantile(times, Coverage.UpperTail))
        );
    }
}
