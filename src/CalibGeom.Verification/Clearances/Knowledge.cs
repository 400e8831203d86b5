using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// The one state of knowledge that every number of an answer comes from: the estimates of a fit, updated by felt fits
/// unless these contradict the sizes.
/// </summary>
internal sealed class Knowledge
{
    /// <summary>Words that the sizes and each other give less than this together contradict.</summary>
    private const double Contradiction = 0.005;

    /// <summary>Fewer effective draws than this carry no answer.</summary>
    private const double FewestDraws = 100;

    private readonly List<LinearEstimate> quantities = [];
    private readonly List<FeltWord> felt = [];
    private readonly PredictionOptions options;
    private readonly FeltPerson person;
    private Draws? draws;
    private FeatureId[] joints = [];
    private FeltReport? report;

    internal Knowledge(PredictionOptions options)
    {
        this.options = options;
        person = new FeltPerson(options.Thresholds);
    }

    /// <summary>Stops the work while a prediction is made.</summary>
    internal CancellationToken Cancellation { get; set; }

    internal int Add(LinearEstimate estimate)
    {
        draws = null;
        quantities.Add(estimate);
        return quantities.Count - 1;
    }

    internal void Feel(FeltWord word)
    {
        draws = null;
        report = null;
        felt.Add(word);
        joints = felt.Select(w => w.Joint).Distinct().Order().ToArray();
    }

    internal LinearEstimate this[int quantity] => quantities[quantity];

    /// <summary>What was felt, whether or not it counts.</summary>
    internal IReadOnlyList<FeltWord> Words => felt;

    /// <summary>How probable the sizes made what was felt.</summary>
    internal FeltReport Felt => report ??= felt.Count == 0 ? FeltReport.None : Judge();

    internal Estimate Of(int quantity)
    {
        LinearEstimate e = quantities[quantity];
        return NeedsDraws ? Drawn.Summary(quantity, e.DegreesOfFreedom) : Estimate.Of(e);
    }

    internal UncertaintyBudget Budget(int quantity) =>
        NeedsDraws
            ? Drawn.Budget(quantity, quantities[quantity].DegreesOfFreedom, Cancellation)
            : quantities[quantity].Budget();

    internal double Covariance(int a, int b) =>
        NeedsDraws ? Drawn.Covariance(a, b) : quantities[a].Covariance(quantities[b]);

    /// <summary>The probability that all of one or two clearances are over zero.</summary>
    internal double AllPositive(int[] axes) => AllBetween(axes, 0, double.PositiveInfinity);

    /// <summary>The probability that all of one or two clearances lie between two limits.</summary>
    internal double AllBetween(int[] axes, double low, double high)
    {
        if (NeedsDraws)
        {
            Draws all = Drawn;
            return Math.Clamp(
                all.Mean(n => axes.All(a => all.Values(a)[n] > low && all.Values(a)[n] <= high) ? 1 : 0),
                0,
                1
            );
        }
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

    /// <summary>
    /// The probability of each felt fit; of a joint that was felt, that of the same person feeling it again.
    /// </summary>
    internal IReadOnlyDictionary<FeltFit, double> Fits(int[] axes, FeatureId? joint)
    {
        (LinearEstimate x, LinearEstimate y, double r) = Pair(axes);
        Draws? all = NeedsDraws ? Drawn : null;
        int place = joint is { } j ? Array.IndexOf(joints, j) : -1;
        return Enum.GetValues<FeltFit>()
            .ToDictionary(
                fit => fit,
                fit =>
                    all is null
                        ? BivariateNormal.Mean(
                            (a, b) => options.Thresholds.Probability(fit, Math.Min(a, b), (a + b) / 2),
                            x.Value,
                            x.StandardUncertainty,
                            y.Value,
                            y.StandardUncertainty,
                            r
                        )
                        : all.Mean(n => Likelihood(all, fit, axes, place >= 0 ? place : joints.Length, n))
            );
    }

    private bool NeedsDraws => options.Route == Route.MonteCarlo || (felt.Count > 0 && !Felt.Contradicts);

    /// <summary>The draws, after the felt fits when these count.</summary>
    private Draws Drawn
    {
        get
        {
            Cancellation.ThrowIfCancellationRequested();
            return draws ??= Weighted();
        }
    }

    private Draws Weighted()
    {
        Draws all = NewDraws();
        if (!Felt.Contradicts)
            foreach (FeltWord word in felt)
                Update(all, word);
        return all;
    }

    private FeltReport Judge()
    {
        var alone = new List<double>();
        Draws all = NewDraws();
        foreach (FeltWord word in felt)
            alone.Add(all.Mean(n => Likelihood(all, word, n)));
        double together = 1;
        foreach (FeltWord word in felt.DistinctBy(w => (w.Joint, w.Print, w.Fit)))
            together = Math.Min(together, Update(all, word));
        return new FeltReport(alone, together < Contradiction || all.EffectiveCount < FewestDraws);
    }

    /// <summary>One shift more than joints felt: that of a joint the person has not felt yet.</summary>
    private Draws NewDraws() => Draws.Of(quantities, joints.Length + 1, options, Cancellation);

    private double Update(Draws all, FeltWord word)
    {
        Cancellation.ThrowIfCancellationRequested();
        return all.Update(n => Likelihood(all, word, n));
    }

    private double Likelihood(Draws all, FeltWord word, int n) =>
        Likelihood(all, word.Fit, word.Quantities, Array.IndexOf(joints, word.Joint), n);

    private double Likelihood(Draws all, FeltFit fit, IReadOnlyList<int> axes, int place, int n) =>
        person.Probability(fit, all.Values(axes[0])[n], all.Values(axes[^1])[n], all.Shifts(place)[n]);

    private (LinearEstimate X, LinearEstimate Y, double Correlation) Pair(int[] axes)
    {
        LinearEstimate x = quantities[axes[0]],
            y = quantities[axes[^1]];
        double product = x.StandardUncertainty * y.StandardUncertainty;
        return (x, y, product > 0 ? Math.Clamp(x.Covariance(y) / product, -1, 1) : 1);
    }
}
