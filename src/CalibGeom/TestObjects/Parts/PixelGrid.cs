using CalibGeom.Planar;

namespace CalibGeom.TestObjects.Parts;

/// <summary>What widths and positions move onto: whole pixels when the spec asks for them and the object stands level, else nothing.</summary>
internal sealed class PixelGrid
{
    private readonly PerAxis? pitch;

    internal PixelGrid(TestObjectSpec spec)
    {
        if (spec.Process is { Snap: PixelSnap.Pixels } process && spec.Tilt.Angle == 0) pitch = process.PixelPitch;
    }

    /// <summary>A width as it is made: a whole number of pixels, at least one.</summary>
    internal PerAxis Width(PerAxis wanted) => new(Width(wanted.X, pitch?.X), Width(wanted.Y, pitch?.Y));

    /// <summary>A difference of two widths as it is made: a whole number of pixels, which may be zero or negative.</summary>
    internal PerAxis Difference(PerAxis wanted) => new(Multiple(wanted.X, pitch?.X), Multiple(wanted.Y, pitch?.Y));

    /// <summary>A position as it is made.</summary>
    internal (double X, double Y) Position(double x, double y) => (Position(x, pitch?.X), Position(y, pitch?.Y));

    private static double Width(double wanted, double? pitch) => Math.Max(pitch ?? 0, Multiple(wanted, pitch));

    private static double Position(double wanted, double? pitch) => Grid.Snap(Multiple(wanted, pitch));

    private static double Multiple(double wanted, double? pitch) =>
        pitch is { } p ? Math.Round(wanted / p, MidpointRounding.AwayFromZero) * p : wanted;
}
