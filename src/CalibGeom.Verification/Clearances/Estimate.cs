using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>A value with its standard uncertainty and its 95 % coverage interval. Immutable.</summary>
/// <param name="Value">The best estimate.</param>
/// <param name="StandardUncertainty">Standard uncertainty.</param>
/// <param name="DegreesOfFreedom">Effective degrees of freedom.</param>
/// <param name="Interval">The 95 % interval.</param>
public sealed record Estimate(double Value, double StandardUncertainty, double DegreesOfFreedom, Interval Interval)
{
    /// <summary>Half the width of the interval: the expanded uncertainty (95 %).</summary>
    public double Expanded => Interval.Width / 2;

    /// <summary>The coverage factor k = U / u; 0 without uncertainty.</summary>
    public double CoverageFactor => StandardUncertainty > 0 ? Expanded / StandardUncertainty : 0;

    internal static Estimate Of(LinearEstimate estimate) =>
        Of(estimate.Value, estimate.StandardUncertainty, estimate.DegreesOfFreedom);

    internal static Estimate Of(double value, double u, double degreesOfFreedom)
    {
        double half = Coverage.StudentFactor(degreesOfFreedom) * u;
        return new Estimate(value, u, degreesOfFreedom, new Interval(value - half, value + half));
    }
}
