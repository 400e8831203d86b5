using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>A value with its standard uncertainty and its 95 % coverage interval.</summary>
/// <param name="Value">The best estimate.</param>
/// <param name="StandardUncertainty">Standard uncertainty.</param>
/// <param name="DegreesOfFreedom">Effective degrees of freedom.</param>
/// <param name="Interval">The 95 % interval.</param>
public sealed record Estimate(double Value, double StandardUncertainty, double DegreesOfFreedom, Interval Interval)
{
    /// <summary>Half the width of the interval: the expanded uncertainty (95 %).</summary>
    public double Expanded => Interval.Width / 2;

    internal static Estimate Of(LinearEstimate estimate)
    {
        double nu = estimate.DegreesOfFreedom,
            half = Coverage.StudentFactor(nu) * estimate.StandardUncertainty;
        return new Estimate(
            estimate.Value,
            estimate.StandardUncertainty,
            nu,
            new Interval(estimate.Value - half, estimate.Value + half)
        );
    }
}
