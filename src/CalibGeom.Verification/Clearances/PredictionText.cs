using System.Globalization;
using CalibGeom.Verification.Decisions;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>A prediction in words.</summary>
public static class PredictionText
{
    /// <summary>
    /// The answer in one sentence for each joint: "joint 1 should slide: 0.043 mm per side, 0.021 to 0.065, in X; ...".
    /// </summary>
    /// <param name="prediction">The prediction.</param>
    public static IReadOnlyList<string> Sentences(ClearancePrediction prediction)
    {
        ArgumentNullException.ThrowIfNull(prediction);
        return prediction
            .Joints.Select(j =>
                j.Withheld is { } why
                    ? Say($"{j.Fit.Spoken}: no answer, {why}")
                    : Say($"{j.Fit.Spoken} {Expectation(j.Fits)}: {string.Join("; ", j.Axes.Select(Clause))}")
            )
            .ToArray();
    }

    /// <summary>The answer for a joint of one's own in one sentence.</summary>
    /// <param name="joint">The joint.</param>
    public static string Sentence(OwnJoint joint)
    {
        ArgumentNullException.ThrowIfNull(joint);
        if (joint.Withheld is { } why)
            return Say($"a {joint.PegNominal:0.###} mm peg in a {joint.HoleNominal:0.###} mm hole: no answer, {why}");
        return string.Create(
            CultureInfo.InvariantCulture,
            $"a {joint.PegNominal:0.###} mm peg in a {joint.HoleNominal:0.###} mm hole "
                + $"{Expectation(joint.Fits)}: {string.Join("; ", joint.Axes.Select(a => Range(a.Clearance, a.Axis)))}"
        );
    }

    /// <summary> A result as JCGM 100, 7.2.4, wants it: value, expanded uncertainty, what it is made of. </summary>
    /// <param name="name">What it is the result of.</param>
    /// <param name="e">The estimate, mm.</param>
    public static string ResultLine(string name, Estimate e)
    {
        ArgumentNullException.ThrowIfNull(e);
        double student = Coverage.StudentFactor(e.DegreesOfFreedom);
        string freedom =
            Math.Abs(e.CoverageFactor - student) > 1e-9 * student ? "from the distribution drawn, JCGM 101"
            : e.DegreesOfFreedom < 1000 ? Say($"{Math.Floor(e.DegreesOfFreedom):0} degrees of freedom")
            : "many degrees of freedom";
        return Say(
            $"{name} = ({e.Value:0.0000} +- {e.Expanded:0.0000}) mm, where the number after +- is U = k u with u = {e.StandardUncertainty:0.0000} mm and k = {e.CoverageFactor:0.00} ({freedom}), for a level of confidence of 95 %"
        );
    }

    /// <summary>A decision in words.</summary>
    /// <param name="decision">The decision, limits in mm per side.</param>
    public static string Sentence(ConformityDecision decision)
    {
        ArgumentNullException.ThrowIfNull(decision);
        string verdict = decision.Verdict switch
        {
            Verdict.Conforms => "conforms",
            Verdict.DoesNotConform => "does not conform",
            _ => "cannot be told",
        };
        return Say(
            $"{verdict}: {decision.Value:0.000} mm against {decision.Limits.Low:0.000} to {decision.Limits.High:0.000} with a guard band of {decision.GuardBand:0.000} (ISO 14253-1); risk if accepted {Chance(decision.RiskOfAccepting)}, if rejected {Chance(decision.RiskOfRejecting)} (JCGM 106)"
        );
    }

    /// <summary>What is more likely than all else together; else the two likeliest, with their probabilities.</summary>
    private static string Expectation(IReadOnlyDictionary<FeltFit, double> fits)
    {
        KeyValuePair<FeltFit, double>[] likely = [.. fits.OrderByDescending(f => f.Value).Take(2)];
        return likely[0].Value > 0.5
            ? $"should {Verb(likely[0].Key)}"
            : $"may {string.Join(" or ", likely.Select(f => $"{Verb(f.Key)} ({Chance(f.Value)})"))}";
    }

    private static string Chance(double p) =>
        p switch
        {
            > 0 and < 0.005 => "<1 %",
            > 0.995 and < 1 => ">99 %",
            _ => Say($"{100 * p:0} %"),
        };

    /// <summary>The verb of a fit.</summary>
    /// <param name="fit">The fit.</param>
    public static string Verb(FeltFit fit) =>
        fit switch
        {
            FeltFit.Refuses => "refuse",
            FeltFit.Binds => "bind",
            FeltFit.Slides => "slide",
            _ => "rattle",
        };

    /// <summary>The word of a fit, as readings files have it.</summary>
    /// <param name="fit">The fit.</param>
    public static string Word(FeltFit fit) => ReadingWords.Of(fit);

    private static string Clause(AxisClearance c) => Range(c.Clearance, c.Axis);

    private static string Range(Estimate e, string axis) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{e.Value:0.000} mm per side, {e.Interval.Low:0.000} to {e.Interval.High:0.000}, in "
                + $"{axis.ToUpperInvariant()}"
        );

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
