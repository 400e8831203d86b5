using CalibGeom.Verification.Logs;
using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// A clearance to expect at some settings, of what prints can teach: what the caliper may be wrong by stands apart.
/// Immutable.
/// </summary>
public sealed record JointChance
{
    /// <summary>The joint's id.</summary>
    public required string Joint { get; init; }

    /// <summary><c>x</c> or <c>y</c>.</summary>
    public required string Axis { get; init; }

    /// <summary>Wanted clearance per side, mm.</summary>
    public required double Target { get; init; }

    /// <summary>Clearance to expect, mm.</summary>
    public required double Clearance { get; init; }

    /// <summary>Its standard uncertainty, mm.</summary>
    public required double Uncertainty { get; init; }

    /// <summary>The probability that the process lies within the tolerance of the target.</summary>
    public required double OnTarget { get; init; }

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
            return new JointChance
            {
                Joint = joint.Id,
                Axis = axis,
                Target = target,
                Clearance = clearance,
                Uncertainty = deviation,
                OnTarget = chance,
            };
        }
        return [.. last.Joints.SelectMany(j => new[] { Along(j, "x", j.Designed, 1), Along(j, "y", j.DesignedY, -1) })];
    }

    private static double Square(double x) => x * x;
}
