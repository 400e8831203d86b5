namespace CalibGeom.Verification.Logs;

/// <summary>The pixel pitch that a printer can have, as in the process of a spec.</summary>
internal static class PixelPitch
{
    /// <exception cref="ArgumentException">A pitch is not 0.005 to 0.5 mm.</exception>
    internal static PerAxis? Require(PerAxis? pitch, string parameter) =>
        pitch is { } p ? new PerAxis(Within(p.X, parameter), Within(p.Y, parameter)) : null;

    private static double Within(double mm, string parameter) =>
        Features.Require.Within(mm, 0.005, 0.5, "pixel pitch", "mm", parameter);
}
