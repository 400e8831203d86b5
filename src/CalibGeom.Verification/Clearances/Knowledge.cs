using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// The estimates of one fit, updated by felt fits: numbers the joints' clearances, then scale and growth of each axis,
/// and answers for them and for
/// further quantities with the same errors.
/// </summary>
internal sealed class Knowledge
{
    private readonly List<LinearEstimate> quantities = [];
    private readonly List<(int[] Axes, FeltFit Fit)> felt = [];
    private readonly PredictionOptions options;
    private Draws? draws;

    internal Knowledge(PredictionOptions options) => this.options = options;

    internal bool NeedsDraws => options.Route == Route.MonteCarlo || felt.Count > 0;

    internal int Add(LinearEstimate estimate)
    {
        draws = null;
        quantities.Add(estimate);
        return quantities.Count - 1;
    }

    internal void Feel(int[] axes, FeltFit fit)
    {
        draws = null;
        felt.Add((axes, fit));
    }

    internal LinearEstimate this[int quantity] => quantities[quantity];

    /// <summary>The draws, after the felt fits.</summary>
    internal Draws Draws => draws ??= Draw(Clearances.Draws.Of(quantities, options));

    internal Estimate Of(int quantity)
    {
        LinearEstimate e = quantities[quantity];
        return NeedsDraws ? Draws.Summary(quantity, e.DegreesOfFreedom) : Estimate.Of(e);
    }

    internal double Covariance(int a, int b) =>
        NeedsDraws ? Draws.Covariance(a, b) : quantities[a].Covariance(quantities[b]);

    /// <summary>The probability that all of one or two clearances are over zero.</summary>
    internal double AllPositive(int[] axes) => AllBetween(axes, 0, double.PositiveInfinity);

    /// <summary>The probability that all of one or two clearances lie between two limits.</summary>
    internal double AllBetween(int[] axes, double low, double high)
    {
        if (NeedsDraws)
            return Math.Clamp(
                Draws.Mean(n => axes.All(a => Draws.Values(a)[n] > low && Draws.Values(a)[n] <= high) ? 1 : 0),
                0,
                1
            );
        (LinearEstimate x, LinearEstimate y, double r) = Pair(axes);
        double p =
            axes.Length == 1
                ? BivariateNormal.Between(x.Value, x.StandardUncertainty, low, high)
                : BivariateNormal.BothBetween(
                    x.Value,
                    x.StandardUncertainty,
                    y.Value,
                    y.StandardUncertainty,
                    r,
                    low,
                    high
                );
        return Math.Clamp(p, 0, 1);
    }

    /// <summary>The probability of each felt fit.</summary>
    internal IReadOnlyDictionary<FeltFit, double> Fits(int[] axes)
    {
        (LinearEstimate x, LinearEstimate y, double r) = Pair(axes);
        Draws? all = NeedsDraws ? Draws : null;
        return Enum.GetValues<FeltFit>()
            .ToDictionary(
                fit => fit,
                fit =>
                    all is null
                        ? BivariateNormal.Mean(
                            (a, b) => Likelihood(fit, a, b),
                            x.Value,
                            x.StandardUncertainty,
                            y.Value,
                            y.StandardUncertainty,
                            r
                        )
                        : all.Mean(n => Likelihood(fit, all.Values(axes[0])[n], all.Values(axes[^1])[n]))
            );
    }

    /// <summary>How probable each felt fit was before any of them was known.</summary>
    internal IEnumerable<double> Surprise()
    {
        if (felt.Count == 0)
            yield break;
        Draws before = Clearances.Draws.Of(quantities, options);
        foreach ((int[] axes, FeltFit fit) in felt)
            yield return before.Mean(n => Likelihood(fit, before.Values(axes[0])[n], before.Values(axes[^1])[n]));
    }

    private Draws Draw(Draws all)
    {
        foreach ((int[] axes, FeltFit fit) in felt)
            all.Update(n => Likelihood(fit, all.Values(axes[0])[n], all.Values(axes[^1])[n]));
        return all;
    }

    private double Likelihood(FeltFit fit, double x, double y) =>
        options.Thresholds.Probability(fit, Math.Min(x, y), (x + y) / 2);

    private (LinearEstimate X, LinearEstimate Y, double Correlation) Pair(int[] axes)
    {
        LinearEstimate x = quantities[axes[0]],
            y = quantities[axes[^1]];
        double product = x.StandardUncertainty * y.StandardUncertainty;
        return (x, y, product > 0 ? Math.Clamp(x.Covariance(y) / product, -1, 1) : 1);
    }
}
