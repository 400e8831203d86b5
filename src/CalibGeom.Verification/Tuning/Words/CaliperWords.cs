using System.Globalization;
using static CalibGeom.Verification.Tuning.Words.TuningWords;

namespace CalibGeom.Verification.Tuning.Words;

/// <summary>What the caliper itself may be wrong by: said beside the answer, not held against the prints.</summary>
internal static class CaliperWords
{
    private const double LeastDifference = 0.004;

    internal static IEnumerable<Finding> Of(TuningResult result)
    {
        double may = 2 * result.Response.CaliperBias.Uncertainty;
        if (may >= result.Options.Visible)
            yield return Note(
                "caliper",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"All clearances may be off by {may:0.000} mm per side, which "
                        + $"is what this caliper is not known better than."
                ),
                "A gauge block or pin read with the same jaws would tell."
            );
        GrowthPrediction d = result.Response.AxisDifference;
        if (Math.Abs(d.Mean) < LeastDifference || Math.Abs(d.Mean) < 2 * d.Uncertainty)
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
            Limit = 2 * d.Uncertainty,
            Unit = "mm",
        };
    }
}
