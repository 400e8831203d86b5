using System.Globalization;
using CalibGeom.Verification.Uncertainty;
using static CalibGeom.Verification.Tuning.Words.TuningWords;

namespace CalibGeom.Verification.Tuning.Words;

/// <summary>What the caliper itself may be wrong by: said beside the answer, not held against the prints.</summary>
internal static class CaliperWords
{
    private const double LeastDifference = 0.004;

    internal static IEnumerable<Finding> Of(TuningResult result)
    {
        double bias = 2 * result.Response.CaliperBias.Uncertainty;
        if (bias >= result.Options.Visible)
            yield return Note(
                "caliper",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"All clearances may be off by up to {Coverage.NormalFactor * bias:0.000} mm per side (95 %): "
                        + $"this caliper is not known better."
                ),
                "A gauge block or pin read with the same jaws would tell."
            );
        GrowthPrediction d = result.Response.AxisDifference;
        if (Math.Abs(d.Mean) < LeastDifference || Math.Abs(d.Mean) < Coverage.NormalFactor * d.Uncertainty)
            yield break;
        (string larger, string smaller) = d.Mean > 0 ? ("X", "Y") : ("Y", "X");
        yield return new Finding(
            "axes-differ",
            Severity.Note,
            "",
            string.Create(
                CultureInfo.InvariantCulture,
                $"Solids grow {Math.Abs(d.Mean):0.000} mm more per edge along "
                    + $"{larger} than along {smaller}: that is pixels, not light."
            ),
            "Whole-pixel sizes, the pixel pitch of each axis and the "
                + "scale of each axis in the slicer are where to look."
        )
        {
            Value = d.Mean,
            Limit = Coverage.NormalFactor * d.Uncertainty,
            Unit = "mm",
        };
    }
}
