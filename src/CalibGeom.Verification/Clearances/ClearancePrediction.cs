using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// What readings of a printed test object say: the clearance to expect in each joint, scale and growth of each axis,
/// and how sure that is.
/// The model per axis is outside = W (1 + s) + 2 g, inside = W (1 + s) - 2 g. Not safe to share between threads.
/// </summary>
public sealed partial class ClearancePrediction
{
    private readonly MatchedReadings matched;
    private readonly PredictionOptions options;
    private readonly ModelFit fit;
    private readonly Knowledge knowledge;
    private readonly List<Finding> findings;
    private readonly Dictionary<string, (int Scale, int Growth)> axisQuantities = new(StringComparer.Ordinal);

    private ClearancePrediction(MatchedReadings matched, PredictionOptions options)
    {
        this.matched = matched;
        this.options = options;
        findings = [.. matched.Findings];
        fit = ModelFit.Of(matched, options);
        knowledge = new Knowledge(options);
        IReadOnlyList<JointDesign> designs = JointDesign.All(matched.Table);
        var numbers = designs
            .Select(d =>
                (
                    Design: d,
                    Axes: fit.Axes.Where(d.Axes.ContainsKey)
                        .Select(a => (Axis: a, Quantity: knowledge.Add(fit.System.Predict(Target(d, a)))))
                        .ToArray()
                )
            )
            .ToArray();
        foreach (string axis in fit.Axes)
            axisQuantities[axis] = (
                knowledge.Add(fit.System.Predict(fit.Scale(axis))),
                knowledge.Add(fit.System.Predict(fit.Growth(axis)))
            );
        foreach (var (design, axes) in numbers)
            if (axes.Length > 0)
                foreach (FeltFit felt in matched.FitsOf(design.FitId))
                    knowledge.Feel(axes.Select(a => a.Quantity).ToArray(), felt);
        Axes = fit.Axes.Select(AxisOf).ToArray();
        Joints = numbers.Where(n => n.Axes.Length > 0).Select(n => JointOf(n.Design, n.Axes)).ToArray();
        Residuals = ResidualsOf().ToArray();
        PrintThrough = VerticalGauges.PrintThroughOf(matched);
        Squeeze = VerticalGauges.SqueezeOf(matched, PrintThrough);
        HeightScale = VerticalGauges.HeightScaleOf(matched, options);
        findings.AddRange(PredictionFindings.Of(this, matched, designs, knowledge));
    }

    /// <summary>The joints, in order of their numbers.</summary>
    public IReadOnlyList<JointPrediction> Joints { get; }

    /// <summary>Scale and growth of each axis that was measured, X first.</summary>
    public IReadOnlyList<AxisEstimate> Axes { get; }

    /// <summary>Scale of X less scale of Y, or null when one was not measured.</summary>
    public AxisDifference? ScaleDifference => Difference(a => a.Scale);

    /// <summary>Growth of X less growth of Y, mm, or null when one was not measured.</summary>
    public AxisDifference? GrowthDifference => Difference(a => a.Growth);

    /// <summary>How far each measured face lies from the model, in order of feature ids.</summary>
    public IReadOnlyList<FaceResidual> Residuals { get; }

    /// <summary>Print-through from the count of open slots, or null when they were not counted.</summary>
    public Bracket? PrintThrough { get; }

    /// <summary>Height lost in the lowest layers, from the squeeze tab less print-through, or null.</summary>
    public Bracket? Squeeze { get; }

    /// <summary>Proportional change of heights, or null when none was read.</summary>
    public Estimate? HeightScale { get; }

    /// <summary>Slips, outliers and what the readings leave open.</summary>
    public IReadOnlyList<Finding> Findings => findings;

    /// <summary>What the prediction assumed.</summary>
    public PredictionOptions Options => options;

    /// <summary>Predicts from readings.</summary>
    /// <param name="features">What was printed.</param>
    /// <param name="readings">What was read of one print, of one coupon.</param>
    /// <param name="options">Assumptions; null for the defaults.</param>
    /// <exception cref="InputException">A reading belongs to no feature, readings belong to several coupons, or there
    /// is no size of a box or span.</exception>
    public static ClearancePrediction From(
        FeatureTable features,
        ReadingSet readings,
        PredictionOptions? options = null
    )
    {
        ArgumentNullException.ThrowIfNull(features);
        ArgumentNullException.ThrowIfNull(readings);
        MatchedReadings matched = MatchedReadings.From(features, readings);
        if (!matched.Sizes.Any(g => matched.Features[g.Id] is var f && Face.Of(f) is not null))
        {
            string aside = string.Join(
                " ",
                matched.Findings.Where(f => f.Rule == "reading-far-off").Take(1).Select(f => f.Message)
            );
            throw new InputException(
                $"There is no usable size of a box or a span in X or Y to predict from. Measure box1.outside.x "
                    + $"and box2.inside.x at least. {aside}".TrimEnd()
            );
        }
        return new ClearancePrediction(matched, options ?? PredictionOptions.Default);
    }

    /// <summary>The covariance of the growths of two axes in <see cref="Axes"/>, mm squared.</summary>
    /// <param name="first">Index of one axis.</param>
    /// <param name="second">Index of the other, maybe the same.</param>
    public double GrowthCovariance(int first, int second) =>
        knowledge.Covariance(axisQuantities[Axes[first].Axis].Growth, axisQuantities[Axes[second].Axis].Growth);

    internal ModelFit Fit => fit;

    private LinearTarget Target(JointDesign design, string axis) =>
        fit.Clearance(design.Axes[axis].Peg, design.Axes[axis].Pocket);

    private AxisEstimate AxisOf(string axis)
    {
        (int s, int g) = axisQuantities[axis];
        Estimate scale = knowledge.Of(s),
            growth = knowledge.Of(g);
        return new AxisEstimate(
            axis,
            scale,
            growth,
            knowledge.Covariance(s, g),
            fit.ScaleAssumed(axis),
            Chance(scale),
            Chance(growth)
        );
    }

    private static double Chance(Estimate e) =>
        Coverage.TwoSidedProbability(e.Value, e.StandardUncertainty, e.DegreesOfFreedom);

    private AxisDifference? Difference(Func<(int Scale, int Growth), int> which)
    {
        if (Axes.Count < 2)
            return null;
        LinearEstimate difference = knowledge[which(axisQuantities["x"])].Minus(knowledge[which(axisQuantities["y"])]);
        Estimate e = Estimate.Of(difference);
        return new AxisDifference(e, Chance(e));
    }

    private JointPrediction JointOf(JointDesign design, (string Axis, int Quantity)[] axes)
    {
        int[] quantities = axes.Select(a => a.Quantity).ToArray();
        AxisClearance[] clearances = axes.Select(a => ClearanceOf(design, a.Axis, a.Quantity)).ToArray();
        return new JointPrediction(
            design.Number,
            clearances,
            knowledge.AllPositive(quantities),
            () => knowledge.Fits(quantities),
            matched.FitsOf(design.FitId)
        );
    }

    private AxisClearance ClearanceOf(JointDesign design, string axis, int quantity)
    {
        (Face peg, Face pocket) = design.Axes[axis];
        LinearTarget target = fit.Clearance(peg, pocket);
        LinearEstimate model = fit.System.Predict(target, fromModelOnly: true);
        LinearEstimate? direct = fit.Direct(peg, pocket);
        double? agreement = direct is null ? null : Chance(Estimate.Of(direct.Minus(model)));
        return new AxisClearance(
            design.Number,
            axis,
            target.Constant,
            knowledge.Of(quantity),
            direct is null ? null : Estimate.Of(direct),
            Estimate.Of(model),
            agreement,
            knowledge[quantity].Budget()
        );
    }

    private IEnumerable<FaceResidual> ResidualsOf() =>
        fit.Faces.Zip(
            fit.System.Residuals(),
            (f, r) =>
                new FaceResidual(
                    f.Group.Id,
                    f.Group.Instrument.Name,
                    f.Group.Mean,
                    f.Group.Count,
                    r.Residual,
                    r.U > 1e-9 ? r.Residual / r.U : 0
                )
        );
}
