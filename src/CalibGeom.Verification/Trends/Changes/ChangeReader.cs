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

    // What is seen just so is three times as often chance, or a change that is mostly not seen, as what it looks like;
    // such changes have this standard deviation of ln(light), the smallest step. Our estimates: with them shops with
    // small changes find their size in the interval.
    private const double Sure = 0.3,
        Unseen = 0.1;

    internal ChangeReader(ChangeModel model, TrendOptions options, int last, CancellationToken cancellation = default)
    {
        (this.model, this.options, this.last) = (model, options, last);
        parts = Likely([.. model.Components(last, cancellation)], out double statistic);
        Chance = 1 / (1 + Sure * statistic / model.Limit(last));
        readsGrowth = model.Filter.Points.SelectMany(p => p.Values).Any(v => v.Gauge == Gauge.Growth);
        readsWordsAlone = TrendPoint.AreWordsAlone(model.Filter.Points);
    }

    /// <summary>The most probable single way.</summary>
    internal ChangeComponent Best => parts[0].Part;

    /// <summary>The share of the change by now that had come by a coupon, on average over all ways.</summary>
    internal double MovedBy(int coupon) =>
        parts.Sum(p => p.Weight * p.Part.Case.Course[coupon] / p.Part.Case.Course[last]);

    /// <summary>
    /// The probability that chance made it look so, and that what moved is no more than moves unseen: only what was
    /// seen is read, and of small changes that is mostly what chance made look larger, or turned the other way.
    /// Intervals allow for it; the values, as the verdict, speak of what was seen.
    /// </summary>
    internal double Chance { get; }

    /// <summary>The probability that it is light that moved.</summary>
    internal double LightProbability => Share(p => p.Cause.IsLight);

    /// <summary>The change of ln(light) by now, supposing that it is light.</summary>
    internal Amount LogLight() => Amounts(p => p.Cause.IsLight, _ => 1, 1, p => p.Cause.Coarse);

    internal TrendChange Read()
    {
        var gauges = model.Filter.Points.SelectMany(p => p.Values).Select(v => v.Gauge).ToHashSet();
        double drifts = Share(p => p.Case.Drifts),
            beyond = Beyond();
        return new TrendChange
        {
            LogLight = LogLight(),
            Correction = Correction(),
            Growth = gauges.Contains(Gauge.Growth)
                ? Amounts(_ => true, p => p.Cause.Growth, options.LightEffect.Median)
                : null,
            PrintThrough = gauges.Contains(Gauge.PrintThrough)
                ? Amounts(_ => true, p => p.Cause.PrintThrough, options.PenetrationDepth.Median)
                : null,
            ChanceProbability = Chance,
            LightProbability = LightProbability,
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
    /// (where no growth was read, the light), with that probability; null when nothing speaks for light. It is chosen
    /// by what was seen alone: between that and chance it would meet neither.
    /// </summary>
    internal DoseLost? Correction()
    {
        var ways = parts.Where(p => p.Part.Cause.IsLight).ToArray();
        if (ways.Length == 0)
            return null;
        (double Weight, double Mean, double Deviation)[] moved =
        [
            .. ways.Select(p =>
            {
                (double mean, double deviation) = Moved(p.Part, p.Part.Cause.Coarse);
                return (p.Weight, mean, Math.Max(1e-9, deviation));
            }),
        ];
        double[] reaches = [.. ways.Select(p => Limit(p.Part.Cause, growthFirst: true))];
        double all = moved.Sum(p => p.Weight),
            low = Mixture.QuantileOfNormals(moved, Coverage.LowerTail),
            high = Mixture.QuantileOfNormals(moved, Coverage.UpperTail);
        double Lands(double taken)
        {
            double lands = 0;
            for (int i = 0; i < moved.Length; i++)
                lands += moved[i].Weight * Within(moved[i].Mean, moved[i].Deviation, taken, reaches[i]);
            return lands / all;
        }
        (double best, double seen) = Enumerable
            .Range(0, 41)
            .Select(i => low + i / 40.0 * (high - low))
            .Select(taken => (taken, Lands(taken)))
            .MaxBy(t => t.Item2);
        return new DoseLost(
            best,
            (1 - Chance) * seen + Chance * Within(0, Unseen, best, Limit(Typical, growthFirst: true))
        );
    }

    private static double Within(double mean, double deviation, double middle, double reach) =>
        NormalTable.Below(mean, deviation, middle + reach) - NormalTable.Below(mean, deviation, middle - reach);

    /// <summary>The ways by falling weight, which adds up to 1.</summary>
    private static (double Weight, ChangeComponent Part)[] Likely(ChangeComponent[] all, out double statistic)
    {
        double[] falling = [.. all.Select(c => -c.LogWeight)];
        Array.Sort(falling, all);
        double top = falling[0],
            sum = falling.Sum(f => Math.Exp(top - f)),
            kept = 0;
        statistic = sum * Math.Exp(Math.Min(600, -top));
        var likely = new List<(double Weight, ChangeComponent Part)>();
        for (int i = 0; i < all.Length && kept < (1 - Negligible) * sum; i++)
        {
            double weight = Math.Exp(top - falling[i]);
            likely.Add((weight, all[i]));
            kept += weight;
        }
        return [.. likely.Select(p => (p.Weight / kept, p.Part))];
    }

    private double Share(Func<ChangeComponent, bool> which) => parts.Where(p => which(p.Part)).Sum(p => p.Weight);

    private Amount Amounts(
        Func<ChangeComponent, bool> which,
        Func<ChangeComponent, double> scale,
        double typical,
        Func<ChangeComponent, double>? coarse = null
    )
    {
        var ways = parts.Where(p => which(p.Part)).ToArray();
        double all = ways.Sum(p => p.Weight);
        (double, double, double)[] moved =
        [
            .. ways.Select(p =>
            {
                (double mean, double deviation) = Moved(p.Part, coarse?.Invoke(p.Part) ?? 0);
                double factor = scale(p.Part);
                return (p.Weight / all * (1 - Chance), mean * factor, deviation * Math.Abs(factor));
            }),
            (Chance, 0.0, Unseen * typical),
        ];
        return new Amount(
            Mixture.QuantileOfNormals(ways.Length > 0 ? moved[..^1] : moved, 0.5),
            Mixture.QuantileOfNormals(moved, Coverage.LowerTail),
            Mixture.QuantileOfNormals(moved, Coverage.UpperTail)
        );
    }

    // How far a way has moved by now, with what steps of its effects add as a share of it.
    private (double Mean, double Deviation) Moved(ChangeComponent part, double coarse)
    {
        double course = part.Case.Course[last],
            more = part.Mean * coarse;
        return (part.Mean * course, Math.Sqrt(part.Deviation * part.Deviation + more * more) * course);
    }

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

    // How a small change of light that is not seen would move the gauges.
    private Cause Typical =>
        new(true, [options.LightEffect.Median, options.PenetrationDepth.Median, -options.ColumnExponent], 1);

    private double Beyond() =>
        parts.Sum(p =>
        {
            (double mean, double deviation) = Moved(p.Part, 0);
            deviation = Math.Max(1e-12, deviation);
            double limit = Limit(p.Part.Cause);
            return p.Weight * (1 - Within(mean, deviation, 0, limit));
        });

    private Amount Since()
    {
        double[] times = model.Times;
        double Before(int n) => n > 0 ? times[n - 1] : times[0];
        double After(int n) => n < last ? times[n + 1] : times[last];
        // A step lies between two coupons; a drift began nearer to its coupon than to the next ones.
        var spans = parts
            .GroupBy(p => p.Part.Case, p => p.Weight)
            .Select(c =>
            {
                int at = c.Key.From;
                return c.Key.Drifts
                    ? (c.Sum(), Low: (times[at] + Before(at)) / 2, High: (times[at] + After(at)) / 2)
                    : (c.Sum(), Low: Before(at), High: times[at]);
            })
            .ToArray();
        // Words change when the truth has crossed a range, so that they cannot tell when it set out.
        double low = readsWordsAlone ? times[0] : Mixture.Quantile(spans, Coverage.LowerTail);
        return new Amount(Mixture.Quantile(spans, 0.5), low, Mixture.Quantile(spans, Coverage.UpperTail));
    }

    private Amount Crosses()
    {
        double now = model.Times[last];
        Amount times = Mixture.Of(
            parts
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
        );
        double Far(double time) => time > now + 1000 * model.Spacing ? double.PositiveInfinity : time;
        return new Amount(Far(times.Value), Far(times.Low), Far(times.High));
    }
}
