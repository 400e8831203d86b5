using CalibGeom.Verification.Logs;
using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// A clearance to expect at some settings, of what prints can teach: what the caliper may be wrong by stands apart.
/// Immutable.
/// </summary>
/// <param name="Joint">The joint's id.</param>
/// <param name="Axis"><c>x</c> or <c>y</c>.</param>
/// <param name="Target">Wanted clearance per side, mm.</param>
/// <param name="Clearance">Clearance to expect, mm.</param>
/// <param name="Uncertainty">Its standard uncertainty, mm.</param>
/// <param name="OnTarget">The probability that the process lies within the tolerance of the target.</param>
public sealed record JointChance(
    string Joint,
    string Axis,
    double Target,
    double Clearance,
    double Uncertainty,
    double OnTarget
)
{
    internal static IReadOnlyList<JointChance> Of(
        Trial last,
        ExposureSettings settings,
        ExposureResponse response,
        double targetGrowth,
        double tolerance
    )
    {
        GrowthPrediction growth = response.At(settings, withCaliper: false),
            difference = response.AxisDifference;
        double deviation = 2 * Math.Sqrt(Square(growth.Uncertainty) + Square(difference.Uncertainty) / 4);
        JointChance Along(JointOutcome joint, string axis, double designed, int sign)
        {
            double target = designed - 2 * targetGrowth,
                clearance = designed - 2 * growth.Mean - sign * difference.Mean,
                chance =
                    Normal.CDF(clearance, deviation, target + tolerance)
                    - Normal.CDF(clearance, deviation, target - tolerance);
            return new JointChance(joint.Id, axis, target, clearance, deviation, chance);
        }
        return [.. last.Joints.SelectMany(j => new[] { Along(j, "x", j.Designed, 1), Along(j, "y", j.DesignedY, -1) })];
    }

    private static double Square(double x) => x * x;
}
