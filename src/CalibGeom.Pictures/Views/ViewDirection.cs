using CalibGeom.Meshes;

namespace CalibGeom.Pictures.Views;

/// <summary>Where an object is seen from, in parallel projection. Immutable.</summary>
public sealed record ViewDirection
{
    /// <summary>A direction.</summary>
    /// <param name="azimuth">Where the viewer stands, degrees counter-clockwise from +X seen from above: -90 is the
    /// front.</param>
    /// <param name="elevation">How high the viewer stands, degrees from level, -90 to 90 (straight from above).</param>
    /// <exception cref="ArgumentOutOfRangeException">An angle is out of range or not a number.</exception>
    public ViewDirection(double azimuth, double elevation)
    {
        if (!(Math.Abs(azimuth) <= 360))
            throw new ArgumentOutOfRangeException(nameof(azimuth), azimuth, "An azimuth is -360 to 360 degrees.");
        if (!(Math.Abs(elevation) <= 90))
            throw new ArgumentOutOfRangeException(nameof(elevation), elevation, "An elevation is -90 to 90 degrees.");
        Azimuth = azimuth;
        Elevation = elevation;
        (double sinA, double cosA) = Math.SinCos(azimuth * Math.PI / 180);
        (double sinE, double cosE) = Math.SinCos(elevation * Math.PI / 180);
        Right = new Vector3D(-sinA, cosA, 0);
        Up = new Vector3D(-sinE * cosA, -sinE * sinA, cosE);
        Toward = new Vector3D(cosE * cosA, cosE * sinA, sinE);
    }

    /// <summary>From the front: X to the right, Z up.</summary>
    public static ViewDirection Front { get; } = new(-90, 0);

    /// <summary>From above: X to the right, Y up.</summary>
    public static ViewDirection Top { get; } = new(-90, 90);

    /// <summary>From the front, the right and above.</summary>
    public static ViewDirection Corner { get; } = new(-62, 38);

    /// <summary>Degrees counter-clockwise from +X.</summary>
    public double Azimuth { get; }

    /// <summary>Degrees from level.</summary>
    public double Elevation { get; }

    /// <summary>The direction that runs to the right in the picture, of length 1.</summary>
    public Vector3D Right { get; }

    /// <summary>The direction that runs up in the picture, of length 1.</summary>
    public Vector3D Up { get; }

    /// <summary>The direction to the viewer, of length 1.</summary>
    public Vector3D Toward { get; }

    /// <summary>A point of space as the viewer sees it: X to the right, Y up, and Z to the viewer, mm.</summary>
    /// <param name="point">mm.</param>
    public Vector3D Project(Vector3D point) =>
        new(Vector3D.Dot(point, Right), Vector3D.Dot(point, Up), Vector3D.Dot(point, Toward));
}
