using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Trends;
using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// Which prints under the same conditions are still the same process: light ages and films wear without a word in the
/// log. A print that differs from those before it beyond chance ends their state; they are never pooled with it.
/// </summary>
/// <param name="From">The index of the first print of the newest state; 0 when all are of one.</param>
/// <param name="Chance">The probability of so different a print when nothing has moved; 1 when all are of one.</param>
/// <param name="Doubted">Whether the last print, after all was settled, is off by itself and waits for another.</param>
internal sealed record NewestState(int From, double Chance, bool Doubted)
{
    // A repeat less probable than this is another process; one less probable than these waits for another print, the
    // larger where it is off the target by more than the tolerance.
    private const double Moved = 0.01,
        Odd = 0.05,
        OddAndOff = 0.32;

    internal static NewestState Of(
        IReadOnlyList<Trial> trials,
        TuneOptions options,
        CancellationToken cancellation = default
    )
    {
        if (StateEnd.Of(trials, doubt: Moved, cancellation: cancellation) is { } end)
            return new NewestState(end.Index, end.Probability, false);
        double chance = ChanceOfLast(trials, options, cancellation);
        return chance < Moved
            ? new NewestState(trials.Count - 1, chance, false)
            : new NewestState(0, 1, chance < OddAndOff && Doubts(trials, chance, options, cancellation));
    }

    /// <summary>The prints that are taken together.</summary>
    internal Trial[] Of(Trial[] alike) => alike[From..(Doubted ? ^1 : ^0)];

    /// <summary>What to do next: a doubted print is repeated before anything is called settled.</summary>
    internal NextStep Next(Answer now, Trial[] used) => Doubted ? now.Next.Doubted(used[^1].Settings) : now.Next;

    /// <summary>The prints under the same conditions that are not taken, with the reason.</summary>
    internal IEnumerable<TrialApart> Apart(IReadOnlyList<Trial> all, IReadOnlyList<Trial> alike)
    {
        Trial[] older = [.. alike.Take(From)];
        foreach ((Trial trial, int number) in all.Select((t, i) => (t, i + 1)))
            if (older.Contains(trial, ReferenceEqualityComparer.Instance))
                yield return new TrialApart(number, trial, ["the process has moved since"]);
        if (Doubted)
            yield return new TrialApart(all.Count, all[^1], ["off by itself, and waits for another print"]);
    }

    // After all was settled: off by itself, or off the target by more than the tolerance.
    private static bool Doubts(
        IReadOnlyList<Trial> trials,
        double chance,
        TuneOptions options,
        CancellationToken cancellation
    )
    {
        Answer before = Answer.To([.. trials.SkipLast(1)], options, cancellation);
        if (before.Next.Kind != NextKind.Stop)
            return false;
        double off = Growth(trials[^1]) is { } own ? 2 * Math.Abs(own.Value - before.Target) : 0;
        return chance < Odd || off > options.Tolerance;
    }

    // What all earlier prints, at whatever settings, let expect of a repeat: growth by what was learnt, and comb and
    // bridge.
    private static double ChanceOfLast(IReadOnlyList<Trial> trials, TuneOptions options, CancellationToken cancellation)
    {
        Trial last = trials[^1];
        Trial[] before = [.. trials.SkipLast(1)];
        if (!before.Any(t => t.Settings.SameProcess(last.Settings)))
            return 1;
        double[] chances =
        [
            .. OfGrowth(before, last, options, cancellation),
            .. OfPrintThrough(before, last, options, cancellation),
        ];
        return chances.Length == 0 ? 1 : Math.Min(1, chances.Length * chances.Min());
    }

    private static IEnumerable<double> OfGrowth(
        Trial[] before,
        Trial last,
        TuneOptions options,
        CancellationToken cancellation
    )
    {
        bool sameCaliper = before.Any(t => t.Instrument == last.Instrument && Growth(t) is not null);
        if (!sameCaliper || Growth(last) is not { } own)
            yield break;
        ExposureResponse learnt = ExposureResponse.Of(before, options.Priors, cancellation: cancellation);
        GrowthPrediction expected = learnt.At(last.Settings, withCaliper: false);
        double u = Math.Sqrt(
            expected.Uncertainty * expected.Uncertainty
                + learnt.BetweenPrints * learnt.BetweenPrints
                + own.Uncertainty * own.Uncertainty
        );
        double asRead = expected.Mean + learnt.CaliperBias.Mean;
        yield return 2 * Normal.CDF(0, 1, -Math.Abs(own.Value - asRead) / u);
    }

    private static IEnumerable<double> OfPrintThrough(
        Trial[] before,
        Trial last,
        TuneOptions options,
        CancellationToken cancellation
    )
    {
        if (
            !PrintThroughResponse.IsRead(last)
            || PrintThroughResponse.Of(before, options.Priors, cancellation: cancellation) is not { Known: true } light
        )
            yield break;
        GrowthPrediction z = light.At(last.Settings.Time);
        double u = Math.Sqrt(
            z.Uncertainty * z.Uncertainty + TrendOptions.Default.BetweenThroughs * TrendOptions.Default.BetweenThroughs
        );
        if (last.Slots is { } slots)
            yield return OfComb(slots, z.Mean, u);
        if (BridgeReading.Of(last) is { } bridge)
        {
            // As by another caliper: what one adds to all it reads is not told apart from how deep light passes.
            double own = bridge.Uncertainty,
                bias = Instrument.DefaultOutsideError;
            yield return 2
                * Normal.CDF(0, 1, -Math.Abs(bridge.Value - z.Mean) / Math.Sqrt(u * u + own * own + bias * bias));
        }
    }

    private static double OfComb(SlotOutcome slots, double mean, double u)
    {
        double less = double.IsPositiveInfinity(slots.LowestOpen) ? 1 : Normal.CDF(mean, u, slots.LowestOpen),
            more = double.IsNegativeInfinity(slots.HighestClosed) ? 1 : 1 - Normal.CDF(mean, u, slots.HighestClosed);
        return Math.Min(1, 2 * Math.Min(less, more));
    }

    private static GrowthReading? Growth(Trial trial) =>
        (trial.GrowthX, trial.GrowthY) switch
        {
            ({ } x, { } y) => new GrowthReading(
                (x.Value + y.Value) / 2,
                Math.Sqrt(x.Uncertainty * x.Uncertainty + y.Uncertainty * y.Uncertainty) / 2
            ),
            var (x, y) => x ?? y,
        };
}
