using CalibGeom.Verification.Maps;
using CalibGeom.Verification.Tests.Uncertainty;

namespace CalibGeom.Verification.Tests.Maps;

/// <summary>F tests against certified analyses of variance.</summary>
public class NestedTestTests
{
    [Theory]
    // NIST StRD (read): sums of squares of regression and residuals, their degrees of freedom, certified F.
    [InlineData(4255954.13232369, 1, 26.6173985294224, 34, 5436385.54079785)] // Norris, a straight line
    [InlineData(15.6040343244198, 2, 0.155761768796992e-05, 37, 185330865.995752)] // Pontius, a parabola
    [InlineData(184172401.944494, 6, 836424.055505915, 9, 330.285339234588)] // Longley, six terms
    public void Certified(double explained, int freedom, double left, int leftFreedom, double expected) =>
        Near.Relative(expected, NestedTest.Of(explained + left, left, freedom, leftFreedom).Statistic, 1e-8);

    [Theory]
    // Percentage points of F from printed tables (memory: 5 % of F(2, 10) 4.10, of F(3, 7) 4.35; 1 % of F(1, 5) 16.26).
    [InlineData(4.10, 2, 10, 0.05, 3e-4)]
    [InlineData(4.35, 3, 7, 0.05, 3e-4)]
    [InlineData(16.26, 1, 5, 0.01, 3e-5)]
    // With a known scale F is chi-square over its degrees of freedom: 5.991 / 2 is the 5 % point.
    [InlineData(2.9957, 2, double.PositiveInfinity, 0.05, 1e-5)]
    public void Probabilities(double f, int freedom, double leftFreedom, double expected, double within) =>
        Near.Absolute(expected, new NestedTest(f, freedom, leftFreedom).Probability, within);
}
