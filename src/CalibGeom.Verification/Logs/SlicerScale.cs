namespace CalibGeom.Verification.Logs;

/// <summary>The scale typed in the slicer along each axis; 1 leaves sizes as they are. Immutable.</summary>
public sealed record SlicerScale
{
    /// <summary>A scale.</summary>
    /// <param name="x">Along X, 0.8 to 1.25. Default 1.</param>
    /// <param name="y">Along Y, 0.8 to 1.25. Default 1.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public SlicerScale(double x = 1, double y = 1)
    {
        X = Require.Within(x, 0.8, 1.25, "scale along X", "", nameof(x));
        Y = Require.Within(y, 0.8, 1.25, "scale along Y", "", nameof(y));
    }

    /// <summary>No scale.</summary>
    public static SlicerScale None { get; } = new();

    /// <summary>Along X.</summary>
    public double X { get; }

    /// <summary>Along Y.</summary>
    public double Y { get; }
}
