using CalibGeom.Plates;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// The process that a mesh is inspected for and the limits that its layers are held against. The limits' defaults are
/// careful estimates of ours without a published source. Immutable and safe to share between threads.
/// </summary>
public sealed record LayerSettings
{
    private readonly double layerHeight = 0.05;
    private readonly double pixelX = 0.035;
    private readonly double pixelY = 0.035;
    private readonly double minimumPixels = 2;
    private readonly double carriedOverhang = 0.5;
    private readonly double failingOverhang = 2;
    private readonly double carriedBridge = 3;
    private readonly double smallCavity = 5;

    /// <summary>mm, 0.001 to 10; 0.05 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public double LayerHeight
    {
        get => layerHeight;
        init => layerHeight = Require(value, 0.001, 10, nameof(LayerHeight));
    }

    /// <summary>Pixel pitch in x, mm, 0.001 to 10; 0.035 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public double PixelX
    {
        get => pixelX;
        init => pixelX = Require(value, 0.001, 10, nameof(PixelX));
    }

    /// <summary>Pixel pitch in y, mm, 0.001 to 10; 0.035 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public double PixelY
    {
        get => pixelY;
        init => pixelY = Require(value, 0.001, 10, nameof(PixelY));
    }

    /// <summary>
    /// The plate that the mesh must have room on; its height counts where it is given, its place does not. Null, the
    /// default, leaves that unchecked.
    /// </summary>
    public Plate? Plate { get; init; }

    /// <summary>Walls and gaps below this number of pixels are found, 0 to 100; 2 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public double MinimumPixels
    {
        get => minimumPixels;
        init => minimumPixels = Require(value, 0, 100, nameof(MinimumPixels));
    }

    /// <summary>
    /// How far a layer may stick out level beyond the layer below it, mm, 0 to 100; 0.5 by default. Beyond it is a
    /// warning.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public double CarriedOverhang
    {
        get => carriedOverhang;
        init => carriedOverhang = Require(value, 0, 100, nameof(CarriedOverhang));
    }

    /// <summary>The overhang, mm, beyond which it is an error, 0 to 1000; 2 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public double FailingOverhang
    {
        get => failingOverhang;
        init => failingOverhang = Require(value, 0, 1000, nameof(FailingOverhang));
    }

    /// <summary>
    /// The span, mm, up to which a layer carried on two sides is only noted, 0 to 1000; 3 by default. Beyond it is a
    /// warning.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public double CarriedBridge
    {
        get => carriedBridge;
        init => carriedBridge = Require(value, 0, 1000, nameof(CarriedBridge));
    }

    /// <summary>The volume, mm3, below which trapped resin is only noted, 0 to 1,000,000; 5 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public double SmallCavity
    {
        get => smallCavity;
        init => smallCavity = Require(value, 0, 1_000_000, nameof(SmallCavity));
    }

    private static double Require(double value, double least, double most, string name) =>
        value >= least && value <= most
            ? value
            : throw new ArgumentOutOfRangeException(
                name,
                value,
                FormattableString.Invariant($"{name} must be {least} to {most}.")
            );
}
