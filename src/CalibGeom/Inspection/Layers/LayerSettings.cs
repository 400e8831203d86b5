using CalibGeom.Plates;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// The process that a mesh is inspected for and the limits that its layers are held against. The limits' defaults are
/// careful estimates of ours without a published source. Immutable and safe to share between threads.
/// </summary>
public sealed record LayerSettings
{
    private readonly double layerHeight = ProcessDefaults.LayerHeight;
    private readonly double pixelX = ProcessDefaults.PixelPitch;
    private readonly double pixelY = ProcessDefaults.PixelPitch;
    private readonly double minimumPixels = 2;
    private readonly double carriedOverhang = 0.5;
    private readonly double failingOverhang = 2;
    private readonly double carriedBridge = 3;
    private readonly double smallCavity = 5;

    /// <summary>mm, 0.001 to 10; 0.05 by default.</summary>
    /// <exception cref="ArgumentException">Out of range.</exception>
    public double LayerHeight
    {
        get => layerHeight;
        init => layerHeight = Require.Within(value, 0.001, 10, "layer height", "mm", nameof(LayerHeight));
    }

    /// <summary>Pixel pitch in x, mm, 0.001 to 10; 0.04 by default.</summary>
    /// <exception cref="ArgumentException">Out of range.</exception>
    public double PixelX
    {
        get => pixelX;
        init => pixelX = Require.Within(value, 0.001, 10, "pixel pitch along X", "mm", nameof(PixelX));
    }

    /// <summary>Pixel pitch in y, mm, 0.001 to 10; 0.04 by default.</summary>
    /// <exception cref="ArgumentException">Out of range.</exception>
    public double PixelY
    {
        get => pixelY;
        init => pixelY = Require.Within(value, 0.001, 10, "pixel pitch along Y", "mm", nameof(PixelY));
    }

    /// <summary>
    /// The plate that the mesh must have room on; its height counts where it is given, its place does not. Null, the
    /// default, leaves that unchecked.
    /// </summary>
    public Plate? Plate { get; init; }

    /// <summary>Walls and gaps below this number of pixels are found, 0 to 100; 2 by default.</summary>
    /// <exception cref="ArgumentException">Out of range.</exception>
    public double MinimumPixels
    {
        get => minimumPixels;
        init =>
            minimumPixels = Require.Within(
                value,
                0,
                100,
                "number of pixels of the thinnest wall",
                "",
                nameof(MinimumPixels)
            );
    }

    /// <summary>
    /// How far a layer may stick out level beyond the layer below it, mm, 0 to 100; 0.5 by default. Beyond it is a
    /// warning.
    /// </summary>
    /// <exception cref="ArgumentException">Out of range.</exception>
    public double CarriedOverhang
    {
        get => carriedOverhang;
        init => carriedOverhang = Require.Within(value, 0, 100, "carried overhang", "mm", nameof(CarriedOverhang));
    }

    /// <summary>The overhang, mm, beyond which it is an error, 0 to 1000; 2 by default.</summary>
    /// <exception cref="ArgumentException">Out of range.</exception>
    public double FailingOverhang
    {
        get => failingOverhang;
        init => failingOverhang = Require.Within(value, 0, 1000, "failing overhang", "mm", nameof(FailingOverhang));
    }

    /// <summary>
    /// The span, mm, up to which a layer carried on two sides is only noted, 0 to 1000; 3 by default. Beyond it is a
    /// warning.
    /// </summary>
    /// <exception cref="ArgumentException">Out of range.</exception>
    public double CarriedBridge
    {
        get => carriedBridge;
        init => carriedBridge = Require.Within(value, 0, 1000, "carried bridge", "mm", nameof(CarriedBridge));
    }

    /// <summary>The volume, mm3, below which trapped resin is only noted, 0 to 1,000,000; 5 by default.</summary>
    /// <exception cref="ArgumentException">Out of range.</exception>
    public double SmallCavity
    {
        get => smallCavity;
        init => smallCavity = Require.Within(value, 0, 1_000_000, "small cavity", "mm3", nameof(SmallCavity));
    }
}
