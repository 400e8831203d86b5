using CalibGeom.Planar;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts;

/// <summary>
/// What widths and positions move onto: whole pixels when the spec asks for them and the object stands level, else
/// nothing.
/// </summary>
internal sealed class PixelGrid
{
    private readonly PerAxis? pitch;

    internal PixelGrid(TestObjectSpec spec)
    {
        if (spec.Process is { Snap: PixelSnap.Pixels } process && spec.Tilt.Angle == 0)
            pitch = process.PixelPitch;
    }

    /// <summary>A width as it is made: a whole number of pixels, at least one.</summary>
    internal PerAxis Width(PerAxis wanted) => new(Width(wanted.X, pitch?.X), Width(wanted.Y, pitch?.Y));

    /// <summary>
    /// A difference of two widths as it is made: a whole number of pixels, which may be zero or negative.
    /// </summary>
    internal PerAxis Difference(PerAxis wanted) => new(Multiple(wanted.X, pitch?.X), Multiple(wanted.Y, pitch?.Y));

    /// <summary>A position as it is made: whole pixels.</summary>
    internal (double X, double Y) Position(double x, double y) => (Position(x, pitch?.X), Position(y, pitch?.Y));

    /// <summary>
    /// The place of a part with whole pixels from face to face: whole pixels from the plinth's centre and a quarter of
    /// one. Even and odd widths then both end a quarter of a pixel from its border, with the plinth's centre on a
    /// border as in the middle of a pixel; a face in the middle of a pixel would cover half of it, and nobody knows
    /// whether that is lit.
    /// </summary>
    internal (double X, double Y) Place(double x, double y) =>
        (Position(x, pitch?.X, 0.25), Position(y, pitch?.Y, 0.25));

    private static double Width(double wanted, double? pitch) => Math.Max(pitch ?? 0, Multiple(wanted, pitch));

    private static double Position(double wanted, double? pitch, double share = 0) =>
        Grid.Snap(Multiple(wanted, pitch) + share * (pitch ?? 0));

    private static double Multiple(double wanted, double? pitch) =>
        pitch is { } p ? Math.Round(wanted / p, MidpointRounding.AwayFromZero) * p : wanted;
}
