using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Maps;

/// <summary>The F test of a model against one that it holds. Immutable.</summary>
/// <param name="Statistic">F: the mean square that the larger model explains over the one it leaves.</param>
/// <param name="Freedom">Coefficients more in the larger model.</param>
/// <param name="LeftFreedom">Degrees of freedom of what it leaves; infinity when that is known.</param>
public readonly record struct NestedTest(double Statistic, int Freedom, double LeftFreedom)
{
    /// <summary>The probability of so large a statistic when the smaller model is true.</summary>
    public double Probability =>
        Statistic <= 0 ? 1
        : double.IsInfinity(LeftFreedom) ? 1 - ChiSquared.CDF(Freedom, Statistic * Freedom)
        : 1 - FisherSnedecor.CDF(Freedom, LeftFreedom, Statistic);

    /// <summary>A test from the sums of squares of two least-squares fits of the same observations.</summary>
    /// <param name="squares">What the smaller model leaves.</param>
    /// <param name="left">What the larger leaves.</param>
    /// <param name="freedom">Coefficients more in the larger, at least 1.</param>
    /// <param name="leftFreedom">Observations less coefficients of the larger, above 0.</param>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public static NestedTest Of(double squares, double left, int freedom, double leftFreedom)
    {
        Require.Within(freedom, 1, 1e6, "number of coefficients more", "", nameof(freedom));
        Require.Positive(leftFreedom, double.PositiveInfinity, "degrees of freedom", "", nameof(leftFreedom));
        Require.Within(left, 0, double.MaxValue, "sum of squares", "", nameof(left));
        return new NestedTest(Math.Max(0, squares - left) / freedom / (left / leftFreedom), freedom, leftFreedom);
    }
}
