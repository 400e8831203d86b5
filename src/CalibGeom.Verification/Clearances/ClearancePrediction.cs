using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// What readings of a printed test object say: the clearance to expect in each joint, scale and growth of each axis,
/// and how sure that is. The model per axis is outside = W (1 + s) + 2 g, inside = W (1 + s) - 2 g. Not safe to share
/// between threads.
/// </summary>
public sealed partial class ClearancePrediction
{
    private readonly IReadOnlyList<MatchedReadings> prints;
    private readonly PredictionOptions options;
    private readonly ModelSearch search;
    private readonly ModelFit fit;
    private readonly Knowledge knowledge;
    private readonly JointQuantities[] joints;
    private readonly Dictionary<string, AxisQuantities> axes = new(StringComparer.Ordinal);
    private readonly List<Finding> findings;

    private ClearancePrediction(
        IReadOnlyList<MatchedReadings> prints,
        PredictionOptions options,
        IProgress<double>? progress,
        CancellationToken cancellation
    )
    {
        this.prints = prints;
        this.options = options;
        search = ModelSearch.Of(prints, options, cancellation);
        fit = search.Fit;
        progress?.Report(0.3);
        knowledge = new Knowledge(options) { Cancellation = cancellation };
        joints = Number(knowledge);
        foreach (string axis in fit.Axes)
            axes[axis] = AxisQuantities.Of(fit, knowledge, axis);
        (int Scale, int Growth)? difference = fit.Axes.Count == 2 ? DifferenceQuantities() : null;
        Axes = fit.Axes.Select(AxisOf).ToArray();
        ScaleDifference = DifferenceOf(difference?.Scale);
        GrowthDifference = DifferenceOf(difference?.Growth);
        GrossErrors = Clearances.GrossErrors.Describe(search);
        Burr = BurrOf();
        progress?.Report(0.6);
        Joints = joints.Select(JointOf).ToArray();
        Residuals = ResidualsOf().ToArray();
        progress?.Report(0.9);
        cancellation.ThrowIfCancellationRequested();
        MatchedReadings first = prints[0];
        Bracket? comb = VerticalGauges.CombOf(first),
            bridge = VerticalGauges.BridgeOf(first, options);
        PrintThrough = comb ?? bridge;
        Squeeze = VerticalGauges.SqueezeOf(first, PrintThrough);
        HeightScale = VerticalGauges.HeightScaleOf(first, options);
        LowestLayers = LowestLayers.Of(prints, options, Squeeze);
        findings =
        [
            .. prints.SelectMany(p => p.Findings).Distinct(),
            .. PredictionFindings.Of(this, fit, prints, knowledge),
            .. CountFindings.AgainstTheComb(first, comb),
            .. CountFindings.AgainstTheBridge(comb, bridge),
        ];
        // What is asked of it later is no longer part of this work.
        knowledge.Cancellation = CancellationToken.None;
        progress?.Report(1);
    }

    /// <summary>Every fit of the object that has mates along X or Y, in the order of the table.</summary>
    public IReadOnlyList<JointPrediction> Joints { get; }

    /// <summary>Scale and growth of each axis that was measured, X first.</summary>
    public IReadOnlyList<AxisEstimate> Axes { get; }

    /// <summary>Scale of X less scale of Y, or null when one was not measured.</summary>
    public AxisDifference? ScaleDifference { get; }

    /// <summary>Growth of X less growth of Y, mm, or null when one was not measured.</summary>
    public AxisDifference? GrowthDifference { get; }

    /// <summary>Whether the readings fit the model, and the form error the intervals rest on.</summary>
    public ModelCheck Check => search.Check;

    /// <summary>Faces that were left out because no scale and growth explains them.</summary>
    public IReadOnlyList<GrossError> GrossErrors { get; }

    /// <summary>What is known of burrs on the outside of boxes; null when no such face was read.</summary>
    public BurrCheck? Burr { get; }

    /// <summary>How much growth differs from print to print: set, assumed or learnt from several prints.</summary>
    public PrintVariation Variation => fit.Settings.Variation;

    /// <summary>How far each measured face lies from the model, in order of prints and feature ids.</summary>
    public IReadOnlyList<FaceResidual> Residuals { get; }

    /// <summary>
    /// Print-through from the count of open slots; where they were not counted from the thickness of the bridge, within
    /// two standard uncertainties; or null.
    /// </summary>
    public Bracket? PrintThrough { get; }

    /// <summary>Height lost in the lowest layers, from the squeeze tab less print-through, or null.</summary>
    public Bracket? Squeeze { get; }

    /// <summary>What plinth and box heights say of the lowest layers; null when neither was read.</summary>
    public LowestLayers? LowestLayers { get; }

    /// <summary>Proportional change of heights, or null when none was read.</summary>
    public Estimate? HeightScale { get; }

    /// <summary>Slips, outliers and what the readings leave open.</summary>
    public IReadOnlyList<Finding> Findings => findings;

    /// <summary>What the prediction assumed.</summary>
    public PredictionOptions Options => options;

    /// <summary>How many prints were read.</summary>
    public int Prints => prints.Count;

    /// <summary>Predicts from the readings of one print.</summary>
    /// <param name="features">What was printed.</param>
    /// <param name="readings">What was read of one print, of one coupon.</param>
    /// <param name="options">Assumptions; null for the defaults.</param>
    /// <param name="progress">Told the finished part, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="InputException">A reading belongs to no feature, readings belong to several coupons, or there
    /// is no size of a box or span.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ClearancePrediction Of(
        FeatureTable features,
        ReadingSet readings,
        PredictionOptions? options = null,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(readings);
        return Of(features, [readings], options, progress, cancellation);
    }

    /// <summary>Predicts from the readings of several prints of one object, each a set.</summary>
    /// <param name="features">What was printed.</param>
    /// <param name="prints">What was read of each print, of one coupon.</param>
    /// <param name="options">Assumptions; null for the defaults.</param>
    /// <param name="progress">Told the finished part, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="InputException">A reading belongs to no feature, readings belong to several coupons, a print
    /// has no size of a box or span, two sets are the same, or conditions differ.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ClearancePrediction Of(
        FeatureTable features,
        IReadOnlyList<ReadingSet> prints,
        PredictionOptions? options = null,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(features);
        ArgumentNullException.ThrowIfNull(prints);
        cancellation.ThrowIfCancellationRequested();
        PrintSets.RequireComparable(prints);
        MatchedReadings[] matched = prints.Select(p => MatchedReadings.Of(features, p)).ToArray();
        foreach (MatchedReadings m in matched)
            RequireSize(m);
        return new ClearancePrediction(matched, options ?? PredictionOptions.Default, progress, cancellation);
    }

    internal ModelFit Fit => fit;

    private static void RequireSize(MatchedReadings matched)
    {
        if (matched.Sizes.Any(g => Face.Of(matched.Features[g.Id]) is not null))
            return;
        string aside = string.Join(
            " ",
            matched.Findings.Where(f => f.Rule == "reading-far-off").Take(1).Select(f => f.Message)
        );
        throw new InputException(
            InputIds.Question,
            $"There is no usable size of a box or a span in X or Y to predict from. Measure box1.outside.x "
                + $"and box2.inside.x at least. {aside}".TrimEnd()
        );
    }

    /// <summary>Numbers the joints' quantities and tells the state of knowledge what was felt.</summary>
    private JointQuantities[] Number(Knowledge known)
    {
        JointQuantities[] all = JointDesign
            .All(prints[0].Table)
            .Select(d => JointQuantities.Of(fit, known, d))
            .Where(j => j.Axes.Count > 0)
            .ToArray();
        foreach (JointQuantities j in all)
            for (int print = 0; print < prints.Count; print++)
            {
                FeltFit[] words = [.. prints[print].FitsOf(j.Design.Fit)];
                if (words.Length == 0)
                    continue;
                int[] of = fit.Several
                    ? j
                        .Axes.Select(a => known.Add(fit.System.Predict(fit.ClearanceOf(print, a.Peg, a.Pocket))))
                        .ToArray()
                    : j.Axes.Select(a => a.Read).ToArray();
                foreach (FeltFit word in words)
                    known.Feel(new FeltWord(j.Design.Fit, print, of, word));
            }
        return all;
    }

    private (int Scale, int Growth) DifferenceQuantities()
    {
        AxisQuantities x = axes["x"],
            y = axes["y"];
        return (
            knowledge.Add(knowledge[x.Scale].Minus(knowledge[y.Scale])),
            knowledge.Add(knowledge[x.Growth].Minus(knowledge[y.Growth]))
        );
    }

    private AxisDifference? DifferenceOf(int? quantity)
    {
        if (quantity is not { } q)
            return null;
        Estimate e = knowledge.Of(q);
        return new AxisDifference(e, Chance(e));
    }

    private AxisEstimate AxisOf(string axis)
    {
        AxisQuantities q = axes[axis];
        Estimate scale = knowledge.Of(q.Scale),
            growth = knowledge.Of(q.Growth);
        return new AxisEstimate
        {
            Axis = axis,
            Scale = scale,
            Growth = growth,
            NextGrowth = knowledge.Of(q.NextGrowth),
            Covariance = knowledge.Covariance(q.Scale, q.Growth),
            ScaleAssumed = fit.ScaleAssumed(axis),
            ScaleProbability = Chance(scale),
            GrowthProbability = Chance(growth),
        };
    }

    private static double Chance(Estimate e) =>
        Coverage.TwoSidedProbability(e.Value, e.StandardUncertainty, e.DegreesOfFreedom);

    private BurrCheck? BurrOf()
    {
        if (options.BurrError == 0 || !fit.Faces.Any(f => ModelRows.HasCorners(f.Face) && !f.Group.Middle))
            return null;
        LinearEstimate burr = fit.System.Predict(fit.Burr());
        double left = burr.StandardUncertainty / options.BurrError,
            told = Math.Max(0, 1 - left * left);
        // The estimate is shrunk by the share that was told; unshrunk it is value / told with u / sqrt(told).
        double t = told > 1e-6 ? burr.Value / Math.Sqrt(told) / Math.Max(burr.StandardUncertainty, 1e-12) : 0;
        double twoSided = Coverage.TwoSidedProbability(t, 1, burr.DegreesOfFreedom);
        return new BurrCheck
        {
            Height = Estimate.Of(burr),
            Told = told,
            Probability = t > 0 ? twoSided / 2 : 1 - twoSided / 2,
        };
    }

    private IEnumerable<FaceResidual> ResidualsOf()
    {
        IEnumerable<FaceResidual> kept = fit.Faces.Zip(
            fit.System.Residuals(),
            (f, r) => ResidualOf(f, r.Residual, r.U > 1e-9 ? r.Residual / r.U : 0, false)
        );
        IEnumerable<FaceResidual> aside = search.Gross.Select(g =>
            ResidualOf(g.Face, g.Distance, g.Distance / g.U, true)
        );
        return kept.Concat(aside).OrderBy(r => r.Print).ThenBy(r => r.Feature);
    }

    private static FaceResidual ResidualOf(ModelFace f, double residual, double standardised, bool aside) =>
        new()
        {
            Feature = f.Face.Id,
            Instrument = f.Group.Instrument.Name,
            Print = f.Print + 1,
            Mean = f.Group.Mean,
            Count = f.Group.Count,
            Residual = residual,
            Standardised = standardised,
            IsAside = aside,
        };
}
