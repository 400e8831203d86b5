using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Slicing;

/// <summary>
/// A field of pixels. Pixel (0, 0) has its lower left corner at the origin; x runs to the right, y to the back.
/// Immutable and safe to share between threads.
/// </summary>
public sealed record PixelGrid
{
    /// <summary>A field of pixels.</summary>
    /// <param name="origin">The lower left corner, mm.</param>
    /// <param name="pitchX">Width of a pixel, mm, 0.001 to 10.</param>
    /// <param name="pitchY">Depth of a pixel, mm, 0.001 to 10.</param>
    /// <param name="width">Pixels in x, at least 1.</param>
    /// <param name="height">Pixels in y, at least 1; at most 1,000,000,000 pixels in all.</param>
    /// <exception cref="ArgumentException">A value is out of range, or no number.</exception>
    public PixelGrid(Vector2D origin, double pitchX, double pitchY, int width, int height)
    {
        if (!double.IsFinite(origin.X + origin.Y))
            throw new ArgumentOutOfRangeException(nameof(origin), origin, "The corner of the pixels must be finite.");
        Require.Within(pitchX, 0.001, 10, "pixel pitch", "mm", nameof(pitchX));
        Require.Within(pitchY, 0.001, 10, "pixel pitch", "mm", nameof(pitchY));
        if (width < 1)
            throw new ArgumentOutOfRangeException(nameof(width), width, "There must be at least one pixel in x.");
        if (height < 1 || (long)width * height > 1_000_000_000)
            throw new ArgumentOutOfRangeException(nameof(height), height, "There must be 1 to 1,000,000,000 pixels.");
        (Origin, PitchX, PitchY, Width, Height) = (origin, pitchX, pitchY, width, height);
    }

    /// <summary>The lower left corner, mm.</summary>
    public Vector2D Origin { get; }

    /// <summary>Width of a pixel, mm.</summary>
    public double PitchX { get; }

    /// <summary>Depth of a pixel, mm.</summary>
    public double PitchY { get; }

    /// <summary>Pixels in x.</summary>
    public int Width { get; }

    /// <summary>Pixels in y.</summary>
    public int Height { get; }

    /// <summary>The area of a pixel, mm2.</summary>
    public double PixelArea => PitchX * PitchY;

    /// <summary>The middle of a pixel, mm.</summary>
    /// <param name="x">Column.</param>
    /// <param name="y">Row.</param>
    public Vector2D Middle(int x, int y) => new(Origin.X + (x + 0.5) * PitchX, Origin.Y + (y + 0.5) * PitchY);

    /// <summary>
    /// The pixels that a box covers and some more on every side; the borders of pixels lie at whole multiples of the
    /// pitch from x = 0 and y = 0, so that the phase does not depend on the box.
    /// </summary>
    /// <param name="bounds">mm.</param>
    /// <param name="pitchX">Width of a pixel, mm.</param>
    /// <param name="pitchY">Depth of a pixel, mm.</param>
    /// <param name="margin">Pixels to add on every side, 1 by default.</param>
    /// <exception cref="ArgumentException">A value is out of range, or there are more than 1,000,000,000
    /// pixels.</exception>
    public static PixelGrid Covering(Box3D bounds, double pitchX, double pitchY, int margin = 1)
    {
        Require.Within(pitchX, 0.001, 10, "pixel pitch", "mm", nameof(pitchX));
        Require.Within(pitchY, 0.001, 10, "pixel pitch", "mm", nameof(pitchY));
        ArgumentOutOfRangeException.ThrowIfNegative(margin);
        (double left, double width) = Range(bounds.Min.X, bounds.Max.X, pitchX, margin);
        (double front, double height) = Range(bounds.Min.Y, bounds.Max.Y, pitchY, margin);
        if (width * height > 1_000_000_000)
            throw new ArgumentOutOfRangeException(
                nameof(bounds),
                bounds,
                "There would be more than 1,000,000,000 pixels. Is the mesh in millimetres?"
            );
        return new PixelGrid(new(left * pitchX, front * pitchY), pitchX, pitchY, (int)width, (int)height);
    }

    private static (double First, double Count) Range(double min, double max, double pitch, int margin)
    {
        double first = Math.Floor(min / pitch + 1e-6) - margin;
        return (first, Math.Max(1, Math.Ceiling(max / pitch - 1e-6) + margin - first));
    }
}
