using System.Globalization;
using CalibGeom.Verification.Readings;

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
                Say($"joint {j.Number} should {Verb(j.Expected)}: {string.Join("; ", j.Axes.Select(Clause))}")
            )
            .ToArray();
    }

    /// <summary>The answer for a joint of one's own in one sentence.</summary>
    /// <param name="joint">The joint.</param>
    public static string Sentence(OwnJoint joint)
    {
        ArgumentNullException.ThrowIfNull(joint);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"a {joint.PegNominal:0.###} mm peg in a {joint.HoleNominal:0.###} mm hole should "
                + $"{Verb(joint.Expected)}: {string.Join("; ", joint.Axes.Select(a => Range(a.Clearance, a.Axis)))}"
        );
    }

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
