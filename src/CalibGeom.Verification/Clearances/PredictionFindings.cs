using System.Globalization;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>What a finished prediction has to say besides its numbers.</summary>
internal static class PredictionFindings
{
    private const double Unlikely = 0.01;
    private const double Surprising = 0.05;

    internal static IEnumerable<Finding> Of(
        ClearancePrediction p,
        ModelFit fit,
        IReadOnlyList<MatchedReadings> prints,
        Knowledge knowledge
    ) =>
        [
            .. p.GrossErrors.Select(g => Gross(g, p.Prints)),
            .. ModelFindings.Of(p, prints),
            .. Differing(p),
            .. Missing(p, prints[0]),
            .. prints.SelectMany(CountFindings.Of),
            .. prints.SelectMany(CountFindings.Differing),
            .. Felt(knowledge),
            .. LayerFindings.Of(p),
        ];

    internal static Finding Gross(GrossError g, int prints) =>
        new(
            "gross-error",
            Severity.Warning,
            g.Feature,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{(prints > 1 ? $"Print {g.Print}: its" : "Its")} mean lies {g.Distance:+0.000;-0.000} mm from what all "
                    + $"other faces predict, {Math.Abs(g.Distance) / g.StandardUncertainty:0.0} standard uncertainties; it "
                    + $"was left out. {char.ToUpperInvariant(g.LooksLike[0])}{g.LooksLike[1..]}{(g.LooksLike.EndsWith('?') ? "" : ".")}"
            ),
            g.Remedy
        )
        {
            Value = g.Distance,
            Unit = "mm",
        };

    private static IEnumerable<Finding> Differing(ClearancePrediction p) =>
        p
            .Joints.SelectMany(j => j.Axes)
            .Where(c => c.Agreement < Unlikely)
            .Select(c => new Finding(
                "direct-and-model-differ",
                Severity.Warning,
                c.Fit.Item,
                Say(
                    $"In {c.Axis.ToUpperInvariant()} the two faces give {c.Direct!.Value:0.000} mm, the model {c.Model.Value:0.000} mm; chance alone does that with probability {c.Agreement:0.000}."
                ),
                "Measure both faces of the joint again."
            ));

    private static IEnumerable<Finding> Missing(ClearancePrediction p, MatchedReadings first)
    {
        IReadOnlyList<JointDesign> designs = JointDesign.All(first.Table);
        if (designs.Count == 0)
            yield return new Finding(
                "no-joint",
                Severity.Note,
                "",
                "The object has no joint along X or Y; only scale and growth can be said.",
                "Ask for a joint of your own, or print an object with boxes."
            );
        foreach (string axis in designs.SelectMany(d => d.Axes.Keys).Distinct().Order(StringComparer.Ordinal))
            if (!p.Axes.Any(a => a.Axis == axis))
                yield return new Finding(
                    "axis-not-measured",
                    Severity.Note,
                    "",
                    $"No size was read in {axis.ToUpperInvariant()}; nothing is predicted there, and whether a "
                        + $"box enters is judged by the other axis alone.",
                    $"Measure one outside and one inside width in {axis.ToUpperInvariant()}."
                );
        foreach (AxisEstimate a in p.Axes.Where(a => a.ScaleAssumed))
            yield return new Finding(
                "scale-assumed",
                Severity.Note,
                "",
                Say(
                    $"The readings in {a.Axis.ToUpperInvariant()} hardly tell scale from growth; a scale of 0 with standard deviation {p.Options.ScalePrior} was assumed."
                ),
                $"Measure a long face too, such as span.{a.Axis}, or an inside width."
            );
    }

    /// <summary>A small probability in words; none is said to be 0.</summary>
    internal static string Small(double probability) =>
        probability < 0.001 ? "less than 0.001" : Say($"{probability:0.000}");

    private static IEnumerable<Finding> Felt(Knowledge knowledge)
    {
        foreach ((FeltWord word, double probability) in knowledge.Words.Zip(knowledge.Felt.Probabilities))
            if (probability < Surprising)
                yield return new Finding(
                    "felt-against-readings",
                    Severity.Warning,
                    word.Joint,
                    Say(
                        $"{char.ToUpperInvariant(word.Joint.Spoken[0])}{word.Joint.Spoken[1..]} was felt as \"{ReadingWords.Of(word.Fit)}\", which the sizes give a probability of {Small(probability)}."
                    ),
                    "Feel it again, look for burrs and resin left in the corners, and measure its faces again."
                );
        if (knowledge.Felt.Contradicts)
            yield return new Finding(
                "felt-fits-contradict",
                Severity.Warning,
                "",
                "What was felt and what was measured exclude each other. The felt fits do not count: every number is by "
                    + "the sizes alone, and no answer is given in words.",
                "Find out which is wrong: feel the joints again, and measure their faces again."
            );
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
