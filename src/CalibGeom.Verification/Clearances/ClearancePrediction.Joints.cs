using CalibGeom.Verification.Decisions;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <content>The joints of the test object.</content>
public sealed partial class ClearancePrediction
{
    private JointPrediction JointOf(JointQuantities j)
    {
        int[] quantities = j.Axes.Select(a => a.Read).ToArray();
        return new JointPrediction(() => knowledge.Fits(quantities, j.Design.Fit))
        {
            Fit = j.Design.Fit,
            Axes = j.Axes.Select(a => ClearanceOf(j.Design.Fit, a)).ToArray(),
            ProbabilityEnters = knowledge.AllPositive(quantities),
            Felt = prints.SelectMany(p => p.FitsOf(j.Design.Fit)).ToArray(),
            Withheld = Withheld(),
        };
    }

    /// <summary>Growth is common to all joints: what contradicts in one leaves none answered.</summary>
    private string? Withheld()
    {
        if (!knowledge.Felt.Contradicts)
            return null;
        (FeltWord word, double chance) = knowledge.Words.Zip(knowledge.Felt.Probabilities).MinBy(w => w.Second);
        return FormattableString.Invariant(
            $"{word.Joint.Spoken} was felt as \"{ReadingWords.Of(word.Fit)}\", which {(knowledge.Words.Count > 1 ? "the sizes and the other words hardly allow" : "the sizes hardly allow")} (by the sizes alone {PredictionFindings.Small(chance)}); one of them is wrong"
        );
    }

    private AxisClearance ClearanceOf(FeatureId joint, JointAxisQuantities a)
    {
        LinearTarget target = fit.Clearance(a.Peg, a.Pocket);
        LinearEstimate model = fit.System.Predict(target, fromModelOnly: true);
        LinearEstimate? direct = fit.Direct(a.Peg, a.Pocket);
        double? agreement = direct is null ? null : Chance(Estimate.Of(direct.Minus(model)));
        Estimate clearance = knowledge.Of(a.Read);
        return new AxisClearance
        {
            Fit = joint,
            Axis = a.Axis,
            Design = target.Constant,
            Clearance = clearance,
            Mean = knowledge.Of(a.Mean),
            Next = knowledge.Of(a.Next),
            Direct = direct is null ? null : Estimate.Of(direct),
            Model = Estimate.Of(model),
            Agreement = agreement,
            Budget = knowledge.Budget(a.Read),
            Decision = Decide(knowledge, clearance, a.Read, options.Limits),
            Capability = CapabilityOf(a),
        };
    }

    /// <summary>The guard band rests on the expanded uncertainty, which draws give without a normal shape.</summary>
    private static ConformityDecision? Decide(
        Knowledge known,
        Estimate clearance,
        int quantity,
        ToleranceLimits? limits
    ) =>
        limits is null
            ? null
            : ConformityDecision.Of(
                limits,
                clearance.Value,
                Math.Max(clearance.Expanded / Coverage.StudentFactor(clearance.DegreesOfFreedom), 1e-9),
                clearance.DegreesOfFreedom,
                known.AllBetween([quantity], limits.Low, limits.High)
            );

    /// <summary>Each print's clearance by its own readings, against the limits.</summary>
    private Capability? CapabilityOf(JointAxisQuantities a)
    {
        if (options.Limits is not { } limits || !double.IsFinite(limits.Width) || prints.Count < Capability.Fewest)
            return null;
        double[] each = prints
            .Select(p => ModelFit.Of([p], options))
            .Where(f => f.Axes.Contains(a.Axis))
            .Select(f => f.System.Predict(f.Clearance(a.Peg, a.Pocket)).Value)
            .ToArray();
        return each.Length >= Capability.Fewest && each.Distinct().Count() > 1 ? Capability.Of(each, limits) : null;
    }
}
