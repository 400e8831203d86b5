using System.Globalization;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>What a finished prediction has to say besides its numbers.</summary>
internal static class PredictionFindings
{
    private const double Unlikely = 0.01;
    private const double Surprising = 0.05;
    private const double FewDraws = 200;

    internal static IEnumerable<Finding> Of(
        ClearancePrediction p,
        MatchedReadings matched,
        IReadOnlyList<JointDesign> designs,
        Knowledge knowledge
    )
    {
        foreach (FaceResidual r in p.Residuals.Where(r => r.IsOutlier))
            yield return new Finding(
                "outlier",
                Severity.Warning,
                r.Feature,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{r.Mean:0.000} mm lies {r.Residual:+0.000;-0.000} mm from what scale and growth of the "
                        + $"other faces give, {Math.Abs(r.Standardised):0.0} standard uncertainties. It was kept."
                ),
                "Measure it again; look for a burr, a label or a leaning jaw."
            )
            {
                Value = r.Residual,
                Unit = "mm",
            };
        foreach (AxisClearance c in p.Joints.SelectMany(j => j.Axes).Where(c => c.Agreement < Unlikely))
            yield return new Finding(
                "direct-and-model-differ",
                Severity.Warning,
                $"joint{c.Joint}",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"In {c.Axis.ToUpperInvariant()} the two faces give {c.Direct!.Value:0.000} mm, the model "
                        + $"{c.Model.Value:0.000} mm; chance alone does that with probability {c.Agreement:0.000}."
                ),
                "Measure both faces of the joint again."
            );
        foreach (Finding f in Missing(p, designs))
            yield return f;
        foreach (Finding f in CountFindings.Of(matched))
            yield return f;
        foreach (Finding f in Felt(p, matched, designs, knowledge))
            yield return f;
    }

    private static IEnumerable<Finding> Missing(ClearancePrediction p, IReadOnlyList<JointDesign> designs)
    {
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
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The readings in {a.Axis.ToUpperInvariant()} hardly tell scale from growth; a scale of 0 "
                        + $"with standard deviation {p.Options.ScalePrior} was assumed."
                ),
                $"Measure a long face too, such as span.{a.Axis}, or an inside width."
            );
    }

    private static IEnumerable<Finding> Felt(
        ClearancePrediction p,
        MatchedReadings matched,
        IReadOnlyList<JointDesign> designs,
        Knowledge knowledge
    )
    {
        var felt = designs
            .Where(d => p.Joints.Any(j => j.Number == d.Number))
            .SelectMany(d => matched.FitsOf(d.FitId).Select(f => (d.Number, Fit: f)));
        foreach (((int number, FeltFit fit), double probability) in felt.Zip(knowledge.Surprise()))
            if (probability < Surprising)
                yield return new Finding(
                    "felt-against-readings",
                    Severity.Warning,
                    Say($"joint{number}.fit"),
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"Joint {number} was felt as \"{ReadingWords.Of(fit)}\", which the sizes give a "
                            + $"probability of {probability:0.000}."
                    ),
                    "Feel it again, look for burrs and resin left in the corners, and measure its faces again."
                );
        if (
            matched.Others.Any(r => r.Fit is not null)
            && knowledge.NeedsDraws
            && knowledge.Draws.EffectiveCount < FewDraws
        )
            yield return new Finding(
                "felt-fits-contradict",
                Severity.Warning,
                "",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Felt fits and sizes hardly agree: only {knowledge.Draws.EffectiveCount:0} of "
                        + $"{knowledge.Draws.Count} possible cases carry the answer."
                ),
                "Check the felt fits before believing the numbers."
            );
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
