namespace CalibGeom.Verification.Tests.Uncertainty;

/// <summary>Assertions within a tolerance that is named where it is used.</summary>
internal static class Near
{
    internal static void Relative(double expected, double actual, double tolerance) =>
        Assert.InRange(actual, expected - Math.Abs(expected) * tolerance, expected + Math.Abs(expected) * tolerance);

    internal static void Absolute(double expected, double actual, double tolerance) =>
        Assert.InRange(actual, expected - tolerance, expected + tolerance);
}
