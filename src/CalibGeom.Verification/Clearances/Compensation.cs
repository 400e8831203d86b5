using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// Scale factor and edge offset with their uncertainties; what is not distinct from zero is left alone.
/// </summary>
internal static class Compensation
{
    private const double Distinct = 1 - Coverage.Level;

    internal static CompensationAxis Of(AxisEstimate axis, double? pitch)
    {
        bool scaled = axis.ScaleProbability < Distinct && !axis.ScaleAssumed;
        double s = scaled ? axis.Scale.Value : 0,
            variance = axis.Scale.StandardUncertainty * axis.Scale.StandardUncertainty;
        // Growth at the scale that is compensated: with s held at 0 the correlated part of g goes with it.
        double slope = variance > 0 && !scaled ? axis.Covariance / variance : 0;
        double growth = axis.Growth.Value - slope * axis.Scale.Value,
            u = scaled
                ? axis.Growth.StandardUncertainty
                : Math.Sqrt(
                    Math.Max(
                        0,
                        axis.Growth.StandardUncertainty * axis.Growth.StandardUncertainty - slope * axis.Covariance
                    )
                );
        double factor = 1 / (1 + s);
        bool grown = Coverage.TwoSidedProbability(growth, u, axis.Growth.DegreesOfFreedom) < Distinct;
        double offset = grown ? -growth * factor : 0;
        return new CompensationAxis
        {
            Axis = axis.Axis,
            ScaleFactor = Estimate.Of(
                factor,
                axis.Scale.StandardUncertainty * factor * factor,
                axis.Scale.DegreesOfFreedom
            ),
            EdgeOffset = Estimate.Of(offset, u * factor, axis.Growth.DegreesOfFreedom),
            ScaleDistinct = scaled,
            OffsetDistinct = grown,
            EdgeOffsetPixels = offset / pitch,
        };
    }
}
