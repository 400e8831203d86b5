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

    /// <summary>Whether anything moves.</summary>
    internal bool Snaps => pitch is not null;

    /// <summary>A width as it is made: a whole number of pixels, at least one.</summary>
    internal PerAxis Width(PerAxis wanted) => new(Width(wanted.X, pitch?.X), Width(wanted.Y, pitch?.Y));

    /// <summary>A position as it is made.</summary>
    internal (double X, double Y) Position(double x, double y) => (Position(x, pitch?.X), Position(y, pitch?.Y));

    private static double Width(double wanted, double? pitch) =>
        pitch is { } p ? Math.Sign(wanted) * Math.Max(1, Math.Round(Math.Abs(wanted) / p, MidpointRounding.AwayFromZero)) * p : wanted;

    private static double Position(double wanted, double? pitch) =>
        Grid.Snap(pitch is { } p ? Math.Round(wanted / p, MidpointRounding.AwayFromZero) * p : wanted);
}
