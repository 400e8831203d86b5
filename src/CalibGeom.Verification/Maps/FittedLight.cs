using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Maps;

/// <summary>ln(light) at any place less the mean of the coupons, with what it is known to. Immutable.</summary>
/// <param name="Shape">The shape that is supported.</param>
/// <param name="Known">The shape whose uncertainty counts: light that is said to be even may still fall as a plane.</param>
/// <param name="Mean">The mean of the shape's terms over the coupons.</param>
internal sealed record FittedLight(Surface Shape, Surface Known, double[] Mean)
{
    internal Amount At(double x, double y)
    {
        double value = Shape.At(x, y, Mean),
            reach = Coverage.NormalFactor * Known.Deviation(x, y, Mean);
        return new Amount(value, value - reach, value + reach);
    }
}
